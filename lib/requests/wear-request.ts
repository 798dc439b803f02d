import { z } from "zod";
import { usage } from "../car/usage.ts";
import { readCar } from "../car/car.ts";
import { placeName, type WearLine, wearView } from "../engine/index.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { parseRequest } from "./parse-request.ts";

/** What `cornerwise wear` reads; every field may be left out. */
export const WearRequest = z.strictObject({
  car: z.record(z.string(), z.json()).nullish(),
  /** Ids of things that happened lately, as `cornerwise findings` lists them. */
  contexts: z.array(z.string().max(80)).max(100).nullish(),
  /** Parts that were renewed, or are known to be the first ("atKm": 0). */
  fitted: z
    .array(
      z.strictObject({
        part: z.string().max(80),
        place: z.string().max(80).optional(),
        atKm: z.number().min(0).optional(),
        yearsAgo: z.number().min(0).optional(),
      }),
    )
    .max(200)
    .nullish(),
  aheadKm: z.array(z.number().positive().max(1_000_000)).min(1).max(10).nullish(),
  limit: z.number().int().min(1).max(10_000).nullish(),
});
export type WearRequest = z.infer<typeof WearRequest>;

const Probability = z.number().min(0).max(1);

/** What `cornerwise wear` answers. */
export const WearAnswer = z.strictObject({
  release: z.string(),
  /** What the car is taken to have run; worked out from one another, or typical, where not given. */
  km: z.number(),
  years: z.number(),
  wear: z.array(
    z.strictObject({
      suspect: z.string(),
      part: z.string(),
      fault: z.string(),
      place: z.string(),
      onCar: Probability,
      now: Probability,
      ahead: z.array(z.strictObject({ km: z.number(), chance: Probability, ifNeverRenewed: Probability })),
      life: z.strictObject({
        unit: z.enum(["km", "years"]),
        characteristic: z.number(),
        shape: z.number(),
        basis: z.string(),
        /** Title of the source that `basis` names. */
        source: z.string(),
      }),
      age: z.strictObject({ km: z.number(), years: z.number(), ownAge: z.boolean() }),
      modifiers: z.array(
        z.strictObject({ why: z.string(), life: z.number(), odds: z.number(), chance: Probability }),
      ),
    }),
  ),
  /** Lines that the limit left out. */
  leftOut: z.number(),
});
export type WearAnswer = z.infer<typeof WearAnswer>;

const DEFAULT_LIMIT = 30;

/**
 * Answers one wear request: how likely each wear part of the car has failed, and will within the next kilometres.
 *
 * Errors: `bad-request` naming the field and how to mend it; `unknown-id` for a part, place or context that is not there.
 */
export function answerWearRequest(knowledge: Knowledge, input: unknown): WearAnswer {
  const request = parseRequest(WearRequest, "wear-request", input);
  const lines = wearView(knowledge, request.car ?? {}, {
    contexts: request.contexts ?? [],
    fitted: request.fitted ?? [],
    ...(request.aheadKm ? { aheadKm: request.aheadKm } : {}),
  });
  const shown = lines.slice(0, request.limit ?? DEFAULT_LIMIT);
  return {
    release: knowledge.version,
    ...usage(knowledge, readCar(knowledge, request.car ?? {}).car),
    wear: shown.map((line) => row(knowledge, line)),
    leftOut: lines.length - shown.length,
  };
}

function row(knowledge: Knowledge, line: WearLine): WearAnswer["wear"][number] {
  const { fault, part, place, life } = line;
  return {
    suspect: `${fault}@${place}`,
    part: knowledge.parts.find(({ id }) => id === part)?.name ?? part,
    fault: knowledge.faults.find(({ id }) => id === fault)?.name ?? fault,
    place: placeName(knowledge, place),
    onCar: line.onCar,
    now: line.now,
    ahead: [...line.ahead],
    life: { ...life, source: knowledge.sources.find(({ id }) => id === life.basis)?.title ?? life.basis },
    age: line.age,
    modifiers: [...line.modifiers],
  };
}
