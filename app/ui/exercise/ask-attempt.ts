"use client";
import type { z } from "zod";
import { type Ask, type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { browserKey } from "./browser-key.ts";

/** What came of a question to the server: its answer, or why there is none, in words. */
export type Asked<T> =
  | { readonly is: "ok"; readonly value: T }
  | { readonly is: "failed"; readonly code: string | undefined; readonly words: string };

/** Asks with this browser's key; the account's session goes along by itself. */
export async function askServer<S extends z.ZodType>(
  ask: Omit<Ask, "bearer">,
  form: S,
): Promise<Asked<z.output<S>>> {
  const reply = await serverDoor.ask({ ...ask, bearer: browserKey() });
  if (reply.is === "reply" && reply.status < 300) {
    const read = form.safeParse(reply.json);
    if (read.success) return { is: "ok", value: read.data };
    return {
      is: "failed",
      code: undefined,
      words: "The server answered with something that this page cannot read. Load it again.",
    };
  }
  return { is: "failed", code: codeOf(reply), words: wordsOf(reply) };
}

const codeOf = (reply: Reply): string | undefined => (reply.is === "reply" ? reply.problem?.code : "lost");

function wordsOf(reply: Reply): string {
  if (reply.is === "lost") {
    return "The workshop's server does not answer. Exercises are worked on the server: what was done is kept there; try again when it answers.";
  }
  // Better than what is said of any missing thing: it says what to look at.
  return reply.status === 404 && reply.problem?.detail !== undefined
    ? reply.problem.detail
    : failureWords(reply);
}
