/// <reference lib="webworker" />
import "../headers/no-eval.ts";
import { groundCar } from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import {
  drawExercise,
  drawSaid,
  previewExercise,
  readyExercise,
  saidWords,
} from "../../lib/training/index.ts";
import { knowledgeOf } from "../knowledge/knowledge-of.ts";
import { messageOf } from "../text/message-of.ts";
import type { ExerciseKind, ExerciseQuestions } from "./exercise-protocol.ts";
import type { FromWorker, ToWorker } from "./worker-messages.ts";

declare const self: DedicatedWorkerGlobalScope;

let knowledge: Knowledge | undefined;

function loaded(): Knowledge {
  if (knowledge === undefined) throw new Error("The knowledge has not arrived.");
  return knowledge;
}

const ANSWERS: {
  readonly [K in ExerciseKind]: (ask: ExerciseQuestions[K]["ask"]) => ExerciseQuestions[K]["answer"];
} = {
  suspects: ({ car, lately }) => groundCar(loaded(), car, lately).suspects.map((s) => s.id),
  draw: ({ wish, seed }) => drawExercise(loaded(), wish, seededUniform(seed)),
  said: ({ wish, seed }) => {
    const said = drawSaid(loaded(), wish, seededUniform(seed));
    return { said, text: saidWords(loaded(), said) };
  },
  preview: ({ exercise }) => {
    const { path, ...rest } = previewExercise(readyExercise(loaded(), exercise));
    // What a screen shows, and no more: a check that is proposed carries its whole record.
    return {
      ...rest,
      path: path.map(({ id, minutes, found, inFront }) => ({ id, minutes, found, inFront })),
    };
  },
};

self.onmessage = ({ data }: MessageEvent<ToWorker<ExerciseQuestions>>) => {
  if (data.kind === "load") {
    knowledge = knowledgeOf(data.knowledge, data.isNewest);
    return;
  }
  const { id } = data;
  let reply: FromWorker;
  try {
    reply = { id, answer: (ANSWERS[data.kind] as (ask: unknown) => unknown)(data.ask) };
  } catch (error) {
    reply = { id, failed: messageOf(error) };
  }
  self.postMessage(reply);
};
