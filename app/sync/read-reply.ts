import type { z } from "zod";
import type { Reply } from "./door.ts";

/** What a reply holds; undefined when there is none, the server refused, or it said something of another form. */
export function readReply<S extends z.ZodType>(reply: Reply | undefined, form: S): z.output<S> | undefined {
  if (reply?.is !== "reply" || reply.status >= 300) return undefined;
  return form.safeParse(reply.json).data;
}
