import { z } from "zod";
import {
  groundCar,
  mindChangers,
  mindWords,
  misfit,
  misfitWords,
  proposeChecks,
  steadiness,
  steadyWords,
  unexplainedWords,
  weighing,
  whySentence,
  whySuspect,
} from "../engine/index.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { seededUniform } from "../maths/seeded-uniform.ts";
import { answersOf, contextsOf, requireSetUp, WeighRequest } from "./weigh-request.ts";
import { parseRequest } from "./parse-request.ts";

/** What `cornerwise doubt` reads: a weigh request, and how to draw. */
export const DoubtRequest = WeighRequest.extend({
  /** Draws for the steadiness; 200 when left out. */
  draws: z.number().int().min(10).max(5000).nullish(),
  seed: z.number().int().nullish(),
  /** Suspect (`fault@place`) to explain; the leader when left out. */
  suspect: z.string().max(200).nullish(),
});
export type DoubtRequest = z.infer<typeof DoubtRequest>;

const Share = z.number().min(0).max(1);
const Fit = z.strictObject({
  finding: z.string(),
  state: z.enum(["present", "absent", "unknown"]),
  /** Chance of the answer given all others, and before anything was known. */
  givenOthers: Share,
  alone: Share,
  /** Jensen's measure of the answer against the others. Units: bits. */
  conflict: z.number(),
  misread: Share,
  leaderWithout: z.string(),
});

/** What `cornerwise doubt` answers. */
export const DoubtAnswer = z.strictObject({
  release: z.string(),
  /** null when there is nothing to explain. */
  steadiness: z
    .strictObject({
      kind: z.enum(["steady", "either-of-two", "open"]),
      suspect: z.string(),
      share: Share,
      low: Share,
      high: Share,
      draws: z.number(),
      rivals: z.array(z.strictObject({ suspect: z.string(), share: Share })),
      say: z.string(),
    })
    .nullable(),
  misfit: z.strictObject({
    /** Jensen's measure of all answers together. Units: bits. */
    conflict: z.number(),
    answers: z.array(Fit),
    /** Finding that is worth a second look; null when everything fits. */
    lookAgain: z.string().nullable(),
    unexplained: z.boolean(),
    notInKnowledge: Share,
    say: z.array(z.string()),
  }),
  why: z
    .strictObject({
      suspect: z.string(),
      prior: Share,
      present: Share,
      /** Units: natural log-odds; `logOdds` add up to the change from prior to present. */
      answers: z.array(
        z.strictObject({
          finding: z.string(),
          state: z.enum(["present", "absent", "unknown"]),
          logOdds: z.number(),
          ifTakenBack: z.number(),
          say: z.string(),
        }),
      ),
    })
    .nullable(),
  mindChangers: z.array(
    z.strictObject({
      check: z.string(),
      name: z.string(),
      probability: Share,
      leader: z.string(),
      explains: Share,
      say: z.string(),
    }),
  ),
});
export type DoubtAnswer = z.infer<typeof DoubtAnswer>;

const DEFAULT_LIMIT = 10;

/**
 * Answers one doubt request: how steady the ranking is, which answer does not fit, why the leader leads, and what would
 * change that.
 *
 * Errors: `bad-request` naming the field and how to mend it; `unknown-id` for a finding or suspect that does not exist.
 */
export function answerDoubtRequest(knowledge: Knowledge, input: unknown): DoubtAnswer {
  const request = parseRequest(DoubtRequest, "doubt-request", input);
  requireSetUp(knowledge, request.setUp);
  const { answers } = answersOf(knowledge, request);
  const grounded = groundCar(knowledge, request.car ?? {}, contextsOf(knowledge, answers));
  const result = weighing(grounded, answers);
  const { weighed } = result;
  const limit = request.limit ?? DEFAULT_LIMIT;
  const steady = steadiness(grounded, answers, weighed, {
    uniform: seededUniform(request.seed ?? 1),
    draws: request.draws ?? undefined,
  });
  const fit = misfit(grounded, answers, weighed);
  const leader = request.suspect ?? (weighed.target === "none" ? undefined : weighed.ranking[0]?.suspect.id);
  const why = leader === undefined ? undefined : whySuspect(grounded, answers, leader);
  const proposed = proposeChecks(grounded, answers, result, {
    setUp: request.setUp ?? undefined,
    who: request.who ?? undefined,
    lift: request.lift ?? undefined,
    helper: request.helper ?? undefined,
  });
  return {
    release: knowledge.version,
    steadiness:
      steady === undefined
        ? null
        : {
            kind: steady.kind,
            suspect: steady.leader.row.id,
            share: steady.leader.share,
            low: steady.low,
            high: steady.high,
            draws: steady.draws,
            rivals: steady.rivals.map(({ row, share }) => ({ suspect: row.id, share })),
            say: steadyWords(grounded, steady),
          },
    misfit: {
      conflict: fit.conflict,
      answers: fit.answers.slice(0, limit).map(({ by: _, ...answer }) => answer),
      lookAgain: fit.lookAgain?.finding ?? null,
      unexplained: fit.unexplained,
      notInKnowledge: fit.notInKnowledge,
      say: [misfitWords(grounded, fit), unexplainedWords(fit)].filter((s) => s !== undefined),
    },
    why:
      why === undefined
        ? null
        : { ...why, answers: why.answers.map((a) => ({ ...a, say: whySentence(grounded, a) })) },
    mindChangers: mindChangers(grounded, answers, weighed, proposed)
      .slice(0, limit)
      .map((changer) => ({
        check: changer.check.id,
        name: changer.check.name,
        probability: changer.probability,
        leader: changer.leader,
        explains: changer.explains,
        say: mindWords(grounded, changer),
      })),
  };
}
