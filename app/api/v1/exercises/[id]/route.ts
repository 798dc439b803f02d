import { changeExercise as change, removeExercise as remove } from "../../../../../lib/store/index.ts";
import { exerciseFor } from "../../../../server/exercises/exercise-access.ts";
import { readyToWork } from "../../../../server/exercises/ready.ts";
import { exerciseHead } from "../../../../server/exercises/rows.ts";
import { json, matchVersions, nothing } from "../../../../server/reply.ts";
import { changeExercise, readExercise, removeExercise } from "../../../../server/routes/exercises.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readExercise, async (asked) => {
  const kept = await exerciseFor(asked, asked.params.id);
  return json({ ...exerciseHead(kept), exercise: JSON.parse(kept.body) }, kept.version);
});

export const PUT = serve(changeExercise, async (asked) => {
  const { server, params, request, body, now } = asked;
  await exerciseFor(asked, params.id);
  await readyToWork(body);
  const versions = matchVersions(request.headers.get("if-match") ?? "");
  const content = { name: body.name, body: JSON.stringify(body) };
  const head = await change(server.store, params.id, versions, content, now);
  return json(exerciseHead(head), head.version);
});

export const DELETE = serve(removeExercise, async (asked) => {
  await exerciseFor(asked, asked.params.id);
  await remove(asked.server.store, asked.params.id, asked.now);
  return nothing();
});
