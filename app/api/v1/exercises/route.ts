import { randomUUID } from "node:crypto";
import { keepExercise, listExercises as listKept } from "../../../../lib/store/index.ts";
import { ownersSeen } from "../../../server/exercises/exercise-access.ts";
import { readyToWork } from "../../../server/exercises/ready.ts";
import { exerciseHead } from "../../../server/exercises/rows.ts";
import { json } from "../../../server/reply.ts";
import { listExercises, makeExercise } from "../../../server/routes/exercises.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(listExercises, async ({ server, principal }) => {
  const exercises = await listKept(server.store, ownersSeen("keep-exercises", principal));
  return json({ exercises: exercises.map(exerciseHead) });
});

export const POST = serve(makeExercise, async ({ server, principal, body, now }) => {
  await readyToWork(body);
  const head = await keepExercise(server.store, {
    // Not the id that the instructor gave: that may say what is wrong.
    id: randomUUID(),
    ownerId: principal.is === "account" ? principal.id : null,
    name: body.name,
    body: JSON.stringify(body),
    now,
  });
  return json(exerciseHead(head), head.version, { status: 201 });
});
