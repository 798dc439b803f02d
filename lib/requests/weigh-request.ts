import { z } from "zod";
import { readCar } from "../car/car.ts";
import {
  type Answer,
  type AnswerProblem,
  bounded,
  findingName,
  groundCar,
  parseFinding,
  placeName,
  proposeChecks,
  rankingRows,
  stopSignal,
  weighing,
} from "../engine/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { CompiledPart, Knowledge } from "../knowledge/schema/compiled.ts";
import { type Proposal, readText } from "../words/index.ts";
import { parseRequest } from "./parse-request.ts";

/** One finding of a request; ids as `cornerwise findings` lists them. */
const FindingInput = z.object({
  id: z.string().min(1).max(200),
  state: z.enum(["present", "absent", "unknown"]).default("present"),
  level: z.string().max(40).optional(),
  value: z.number().optional(),
  by: z.enum(["report", "check"]).default("check"),
});

/** What `cornerwise weigh` reads; every field may be left out. Fields that it does not know are named, not refused. */
export const WeighRequest = z.looseObject({
  car: z.record(z.string(), z.json()).nullish(),
  text: z.string().max(20_000).nullish(),
  /** Side of the road that traffic keeps to; without it "nearside" and the like in the text give no side. */
  traffic: z.enum(["left", "right"]).nullish(),
  findings: z.array(FindingInput).max(500).nullish(),
  limit: z.number().int().min(1).max(1000).nullish(),
  setUp: z.string().max(80).nullish(),
  who: z.enum(["owner", "driver", "technician"]).nullish(),
  lift: z.boolean().nullish(),
  helper: z.boolean().nullish(),
});
export type WeighRequest = z.infer<typeof WeighRequest>;

/** What `cornerwise weigh` answers. */
export const WeighAnswer = z.strictObject({
  release: z.string(),
  read: z.array(
    z.strictObject({
      finding: z.string(),
      name: z.string(),
      state: z.enum(["present", "absent"]),
      words: z.string(),
    }),
  ),
  ranking: z.array(
    z.strictObject({
      /** `fault@place`; a wider place when the answers do not tell its sides apart. */
      suspect: z.string(),
      part: z.string(),
      names: z.array(z.string()),
      fault: z.string(),
      place: z.string(),
      probability: z.number(),
      present: z.number(),
      /** Only while `approximate`: proven bounds of `present`; `probability` is truly at most `high`. */
      presentBounds: z.strictObject({ low: z.number(), high: z.number() }).optional(),
      proven: z.boolean(),
    }),
  ),
  notInKnowledge: z.number(),
  otherCombinations: z.number(),
  approximate: z.boolean(),
  target: z.enum(["complaint", "findings", "none"]),
  stop: z.strictObject({ kind: z.string(), why: z.string() }),
  notices: z.array(z.strictObject({ suspect: z.string(), probability: z.number(), say: z.string() })),
  next: z.array(
    z.strictObject({
      check: z.string(),
      name: z.string(),
      place: z.string().optional(),
      minutes: z.number(),
      setUp: z.string(),
      setUpMinutes: z.number(),
      gainBits: z.number(),
    }),
  ),
  problems: z.array(z.strictObject({ code: z.string(), finding: z.string(), message: z.string() })),
});
export type WeighAnswer = z.infer<typeof WeighAnswer>;

const DEFAULT_LIMIT = 10;
const NEXT_LISTED = 10;

/**
 * Answers one weigh request: reads the text, takes what it proposes as accepted, weighs, ranks, proposes.
 *
 * What is given under `findings` counts over what was read from the text for the same finding.
 *
 * Errors: `bad-request` naming the field and how to mend it; `unknown-id` for a finding that does not exist.
 */
export function answerWeighRequest(knowledge: Knowledge, input: unknown): WeighAnswer {
  const request = parseRequest(WeighRequest, "weigh-request", input);
  requireSetUp(knowledge, request.setUp);
  const { proposals, answers } = answersOf(knowledge, request);
  const grounded = groundCar(knowledge, request.car ?? {}, contextsOf(knowledge, answers));
  const result = weighing(grounded, answers);
  const weighed = bounded(grounded, result);
  const next = proposeChecks(grounded, answers, result, {
    setUp: request.setUp ?? undefined,
    who: request.who ?? undefined,
    lift: request.lift ?? undefined,
    helper: request.helper ?? undefined,
  });
  const parts = new Map(knowledge.parts.map((p) => [p.id, p]));
  const faults = new Map(knowledge.faults.map((f) => [f.id, f]));
  return {
    release: knowledge.version,
    read: proposals.map((p) => ({
      finding: p.finding,
      name: findingName(knowledge, p.finding),
      state: p.state,
      words: p.words,
    })),
    ranking: rankingRows(grounded, weighed)
      .slice(0, request.limit ?? DEFAULT_LIMIT)
      .map((r) => ({
        suspect: r.id,
        part: parts.get(r.part)?.name ?? r.part,
        names: namesOf(parts.get(r.part), r.part),
        fault: faults.get(r.fault)?.name ?? r.fault,
        place: r.place,
        probability: r.explains,
        present: r.present,
        ...(r.presentBounds && { presentBounds: r.presentBounds }),
        proven: r.proven,
      })),
    notInKnowledge: weighed.notInKnowledge,
    otherCombinations: weighed.otherCombinations,
    approximate: weighed.approximate,
    target: weighed.target,
    stop: stopSignal(weighed, next),
    notices: weighed.notices.map((n) => ({ suspect: n.suspect, probability: n.probability, say: n.say })),
    next: next.slice(0, NEXT_LISTED).map((p) => ({
      check: p.id,
      name: p.name,
      ...(p.place === undefined ? {} : { place: placeName(knowledge, p.place) }),
      minutes: p.minutes,
      setUp: p.setUp,
      setUpMinutes: p.setUpMinutes,
      gainBits: p.gainBits,
    })),
    problems: [...unknownFields(request), ...unusedKeys(knowledge, request.car ?? {}), ...weighed.problems],
  };
}

/** What a request says: what its text proposes, and the answers that come of text and findings. */
export function answersOf(
  knowledge: Knowledge,
  request: Pick<WeighRequest, "text" | "traffic" | "findings">,
): { readonly proposals: readonly Proposal[]; readonly answers: readonly Answer[] } {
  const proposals = request.text
    ? readText(knowledge, request.text, { traffic: request.traffic ?? undefined })
    : [];
  const given = request.findings ?? [];
  const givenIds = new Set(given.map((f) => f.id));
  const answers: Answer[] = [
    ...proposals
      .filter((p) => !givenIds.has(p.finding))
      .map((p): Answer => ({ finding: p.finding, state: p.state, by: "report", level: p.level })),
    ...given.map(
      (f): Answer => ({ finding: f.id, state: f.state, by: f.by, level: f.level, value: f.value }),
    ),
  ];
  return { proposals, answers };
}

/** Ids of what happened to the car lately, by the answers. */
export function contextsOf(knowledge: Knowledge, answers: readonly Answer[]): string[] {
  return answers
    .filter((a) => a.state === "present" && parseFinding(knowledge, a.finding).kind === "context")
    .map((a) => a.finding);
}

/** Every name of a part, its own first. */
function namesOf(part: CompiledPart | undefined, id: string): string[] {
  return part === undefined ? [id] : [...new Set([part.name, ...part.otherNames, ...part.generalNames])];
}

function unknownFields(request: WeighRequest): AnswerProblem[] {
  return Object.keys(request)
    .filter((key) => !Object.hasOwn(WeighRequest.shape, key))
    .map((key) => ({
      code: "no-effect",
      finding: key,
      message: `A request has no field "${key}", so it changes nothing.`,
    }));
}

/** Errors: `unknown-id` for a set-up that the knowledge does not hold. */
export function requireSetUp(knowledge: Knowledge, setUp: string | null | undefined): void {
  const known = knowledge.setUps.setUps.map((s) => s.id);
  if (setUp === undefined || setUp === null || known.includes(setUp)) return;
  throw new CornerwiseError(
    "unknown-id",
    `setUp: "${setUp}" is no set-up; use ${known.map((id) => `"${id}"`).join(", ")}.`,
    {
      setUp,
    },
  );
}

function unusedKeys(knowledge: Knowledge, car: Record<string, unknown>): AnswerProblem[] {
  return readCar(knowledge, car).unused.map((key) => ({
    code: "no-effect",
    finding: `car.${key}`,
    message: `The knowledge does not ask for "car.${key}", so it changes nothing.`,
  }));
}
