import { z } from "zod";
import { rememberPerson } from "../../store/person-here.ts";
import { forgetEnded } from "../../sync/settle-person.ts";

const Person = z.object({ id: z.string(), name: z.string(), role: z.string() });

/** Starts anew as the person whom the server let in: their cases are in a database of their own. */
export function enterAs(json: unknown): void {
  const person = Person.safeParse(json);
  // Without a name in the reply the next page learns it from the server.
  if (person.success) rememberPerson(person.data);
  forgetEnded();
  window.location.assign("/");
}
