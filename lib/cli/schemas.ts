import type { z } from "zod";
import { CaseFile } from "../case/case-file.ts";
import { jsonSchemas, toJsonSchema } from "../knowledge/json-schema.ts";
import { Knowledge } from "../knowledge/schema/compiled.ts";
import { DoubtAnswer, DoubtRequest } from "../requests/doubt-request.ts";
import { OrdersAnswer, OrdersRequest } from "../requests/orders-request.ts";
import { PlayAnswer, PlayRequest } from "../requests/play-request.ts";
import { WearAnswer, WearRequest } from "../requests/wear-request.ts";
import { WeighAnswer, WeighRequest } from "../requests/weigh-request.ts";
import { Course, Exercise } from "../training/exercise.ts";

/** What the library reads and writes besides the knowledge's records: name -> schema. */
const OTHERS: Readonly<Record<string, z.ZodType>> = {
  "weigh-request": WeighRequest,
  "weigh-answer": WeighAnswer,
  "doubt-request": DoubtRequest,
  "doubt-answer": DoubtAnswer,
  "orders-request": OrdersRequest,
  "orders-answer": OrdersAnswer,
  "play-request": PlayRequest,
  "play-answer": PlayAnswer,
  "wear-request": WearRequest,
  "wear-answer": WearAnswer,
  "case-file": CaseFile,
  exercise: Exercise,
  course: Course,
  knowledge: Knowledge,
};

/** JSON Schemas of the knowledge's authored records. */
export function recordSchemas(): Map<string, unknown> {
  return jsonSchemas();
}

/** Every JSON Schema that the command line prints, by name: requests, answers and the compiled knowledge first, then records. */
export function schemasByName(): Map<string, unknown> {
  const schemas = new Map<string, unknown>();
  for (const [name, schema] of Object.entries(OTHERS)) schemas.set(name, toJsonSchema(schema));
  for (const [name, schema] of recordSchemas()) schemas.set(name, schema);
  return schemas;
}
