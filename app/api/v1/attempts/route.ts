import {
  listAttempts as listKept,
  openHandOut,
  startAttempt,
  hashOfToken,
} from "../../../../lib/store/index.ts";
import { openingEntries } from "../../../../lib/training/index.ts";
import { countCode } from "../../../server/attempts.ts";
import { plainCode } from "../../../server/exercises/code.ts";
import { filterOf } from "../../../server/exercises/attempts-asked.ts";
import { badField, readyOf } from "../../../server/exercises/ready.ts";
import { attemptJson } from "../../../server/exercises/rows.ts";
import { ApiProblem } from "../../../server/problem.ts";
import { json } from "../../../server/reply.ts";
import { beginAttempt, listAttempts } from "../../../server/routes/exercises.ts";
import { serve } from "../../../server/serve.ts";

const PAGE = 50;
/** Far more than a class; nobody fills the database with what was handed out. */
const MOST_ATTEMPTS = 500;

export const GET = serve(listAttempts, async ({ server, principal, query }) => {
  const { after, limit = PAGE, ...filter } = query;
  const page = await listKept(server.store, { ...filterOf(principal, filter), after, limit });
  return json({ attempts: page.attempts.map(attemptJson), next: page.next });
});

export const POST = serve(beginAttempt, async ({ server, principal, address, body, now }) => {
  const { id, code, token = "", name = "", key } = body;
  // Unlike a token, a code is short enough to be guessed.
  if (code !== undefined) await countCode(server.store, address);
  const handOut = await openHandOut(
    server.store,
    code === undefined ? { token } : { code: plainCode(code) },
    now,
  );
  if (handOut === undefined) {
    throw new ApiProblem(
      "no-such-hand-out",
      "No exercise is open under this. Check each letter; it may also have run out or been ended: ask the instructor.",
    );
  }
  const account = principal.is === "account" ? principal : undefined;
  if (account === undefined && key === undefined) {
    throw badField("key", "without an account the browser needs a key of its own.");
  }
  const { grounded, exercise } = await readyOf(handOut);
  const called = account?.name ?? (name.trim() === "" ? "Trainee" : name.trim());
  const head = { caseId: id, at: now, by: called };
  await startAttempt(
    server.store,
    {
      id,
      handOutId: handOut.id,
      exerciseId: handOut.exerciseId,
      traineeId: account?.id ?? null,
      name: called,
      tokenHash: account === undefined && key !== undefined ? hashOfToken(key) : null,
    },
    openingEntries(exercise, head, grounded.knowledge.version),
    { now, most: MOST_ATTEMPTS },
  );
  return json({ id, token: account === undefined ? (key ?? null) : null }, undefined, { status: 201 });
});
