import { randomUUID } from "node:crypto";
import { listHandOuts as listKept, makeHandOut as keep } from "../../../../../../lib/store/index.ts";
import type { Exercise } from "../../../../../../lib/training/index.ts";
import { newCode } from "../../../../../server/exercises/code.ts";
import { exerciseFor } from "../../../../../server/exercises/exercise-access.ts";
import { badField, readyToWork } from "../../../../../server/exercises/ready.ts";
import { json } from "../../../../../server/reply.ts";
import { listHandOuts, makeHandOut } from "../../../../../server/routes/exercises.ts";
import { serve } from "../../../../../server/serve.ts";
import { newToken } from "../../../../../server/shared-link.ts";

const YEAR_MS = 366 * 86_400_000;

export const GET = serve(listHandOuts, async (asked) => {
  await exerciseFor(asked, asked.params.id);
  const handOuts = await listKept(asked.server.store, asked.params.id);
  return json({ handOuts: handOuts.map(({ body: _, exerciseId: _id, ...handOut }) => handOut) });
});

export const POST = serve(makeHandOut, async (asked) => {
  const { server, principal, params, body, now } = asked;
  const kept = await exerciseFor(asked, params.id);
  const expiresAt = new Date(body.expiresAt).toISOString();
  if (expiresAt <= now || Date.parse(expiresAt) > Date.parse(now) + YEAR_MS) {
    throw badField("expiresAt", "give a moment that is still to come, within a year.");
  }
  const exercise = JSON.parse(kept.body) as Exercise;
  const { sha256 } = await readyToWork(exercise);
  const id = randomUUID();
  const token = newToken();
  const handOut = {
    id,
    token,
    exerciseId: params.id,
    // From here on it is worked with this very text of the knowledge.
    body: JSON.stringify({ ...exercise, release: sha256 }),
    course: body.course ?? null,
    madeBy: principal.is === "account" ? principal.id : null,
    madeAt: now,
    expiresAt,
  };
  let code = newCode();
  while (!(await keep(server.store, { ...handOut, code }))) code = newCode();
  return json({ id, code, token, expiresAt }, undefined, { status: 201 });
});
