import type { Entry, EntryOf, KnownEntry } from "../../../lib/case/entries.ts";
import { parseEntry } from "../../../lib/case/parse-entry.ts";
import { entryIdOf } from "../../../lib/case/said-by-form.ts";
import { appendEntries, type Link, removePhoto, StoreProblem } from "../../../lib/store/index.ts";
import { ApiProblem } from "../problem.ts";
import { sealed } from "../seal.ts";
import type { Server } from "../server.ts";
import { formCase } from "./form-case.ts";
import { openQuestion } from "./form-view.ts";
import { weighedForm } from "./weighed-form.ts";

/** Who it is in a case: the customer's name stands on the case, and is nobody's to give here. */
export const CUSTOMER = "the customer";

type Body<E> = E extends KnownEntry ? Omit<E, "caseId" | "at" | "by" | "from" | "link"> : never;
type FormEntry = Body<EntryOf<"answered"> | EntryOf<"told"> | EntryOf<"photo"> | EntryOf<"retracted">>;

/**
 * Entries as the form writes them: the customer's, by this link, sealed; each held to its form, as a device could not read one
 * that does not keep it.
 */
export async function byForm(
  { store }: Pick<Server, "store">,
  link: Link,
  now: string,
  bodies: readonly FormEntry[],
): Promise<Entry[]> {
  const head = { caseId: link.target, at: now, by: CUSTOMER, from: "customer", link: link.id } as const;
  const entries = await sealed(
    store,
    bodies.map((body): KnownEntry => ({ ...body, ...head })),
  );
  return entries.map((entry) => parseEntry(entry));
}

async function append(server: Server, link: Link, now: string, bodies: readonly FormEntry[]): Promise<void> {
  const entries = await byForm(server, link, now, bodies);
  try {
    const { version } = await appendEntries(server.store, {
      ...{ caseId: link.target, entries, accountId: null, ownerId: null, now },
    });
    server.watch.grew(link.target, version);
  } catch (error) {
    // The same was sent twice at once: the first one is kept, and its time is another.
    if (!(error instanceof StoreProblem && error.code === "entry-differs")) throw error;
  }
}

/**
 * Records the choice that was made; one that is recorded already is left alone.
 *
 * Errors  ApiProblem question-over: it is not the one to be answered now. bad-input: it has no such choice.
 */
export async function answer(
  server: Server,
  link: Link,
  now: string,
  given: { readonly id: string; readonly question: string; readonly choice: number },
): Promise<void> {
  const held = await formCase(server, link);
  if (held.entries.some(({ id }) => id === given.id)) return;
  const weighed = await weighedForm(held.state);
  // Somebody at the workshop may have entered something meanwhile: what was asked before stays answerable.
  const question = openQuestion(held, weighed) && weighed.open.find((one) => one.id === given.question);
  if (question === undefined) {
    throw new ApiProblem(
      "question-over",
      "It was answered meanwhile, or is not asked any more. Read the form again.",
    );
  }
  const choice = question.choices[given.choice];
  if (choice === undefined) {
    throw new ApiProblem(
      "bad-input",
      `The question has ${question.choices.length} choices, counted from 0.`,
      {
        fields: [{ path: "choice", message: "pick one of the question's choices" }],
      },
    );
  }
  const asked = { question: question.id, text: question.question, choice: choice.label };
  await append(
    server,
    link,
    now,
    choice.answers.map(({ finding, state, level }, n) => ({
      id: entryIdOf(given.id, n),
      kind: "answered",
      finding,
      state,
      how: "report",
      ...(level !== undefined && { level }),
      ...(n === 0 && { asked }),
    })),
  );
}

/** Records the customer's own words. */
export async function tell(
  server: Server,
  link: Link,
  now: string,
  { id, text }: { readonly id: string; readonly text: string },
): Promise<void> {
  const { entries } = await formCase(server, link);
  if (entries.some((entry) => entry.id === id)) return;
  await append(server, link, now, [{ id, kind: "told", text }]);
}

/**
 * Takes back the last thing that was said by this form; one that is gone already is left alone. A photo goes for good.
 *
 * Errors  ApiProblem not-the-last: something was said after it.
 */
export async function takeBack(server: Server, link: Link, now: string, id: string): Promise<void> {
  const { said } = await formCase(server, link);
  const one = said.find((s) => s.id === id);
  if (one === undefined) return;
  if (one !== said.at(-1)) {
    throw new ApiProblem(
      "not-the-last",
      "Only what was said last can be taken back. Take back what came after it first.",
    );
  }
  await append(
    server,
    link,
    now,
    one.entries.map((entry) => ({ id: `${entry}_back`, kind: "retracted", entry })),
  );
  if (one.photo !== undefined) await removePhoto(server.store, link.target, one.photo);
}
