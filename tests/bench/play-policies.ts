import { groundCar } from "../../lib/engine/index.ts";
import {
  byConfidence,
  byMargins,
  chanceOverCost,
  fixedChecklist,
  gainAlone,
  gainPerMinute,
  likeliestFirst,
  marginName,
  type PlayedCase,
  playUnder,
  type Policy,
  randomChoice,
  shippedChoice,
  type StopRule,
} from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import { forecastNotes } from "./forecasts.ts";
import type { PlayedCases, PolicyJob, PolicyResult } from "./simulation-jobs.ts";

/** The policy that the app follows: the shipped choice among checks and questions. */
export const ASKING_TOO = "shipped, asking too";
/** Margins by which the trade of minutes against errors is shown. */
export const MARGINS = [0.35, 0.5, 0.7, 1, 1.5, 2, 2.5, 3];

/** Name of the rule that goes on until a part is 90 % sure. */
export const CONFIDENT = "confidence 0.9";

interface Way {
  readonly name: string;
  readonly policy: Policy;
  readonly asks: boolean;
  /** A quarter of the cases is played under every margin, not only the shipped one. */
  readonly margins: boolean;
  /** A quarter of the cases is also played until it is 90 % sure. */
  readonly confidence: boolean;
}

export const WAYS: readonly Way[] = [
  { name: randomChoice.name, policy: randomChoice, asks: false, margins: false, confidence: false },
  { name: fixedChecklist.name, policy: fixedChecklist, asks: false, margins: false, confidence: true },
  { name: likeliestFirst.name, policy: likeliestFirst, asks: false, margins: true, confidence: true },
  { name: chanceOverCost.name, policy: chanceOverCost, asks: false, margins: false, confidence: false },
  { name: gainAlone.name, policy: gainAlone, asks: false, margins: false, confidence: false },
  { name: gainPerMinute.name, policy: gainPerMinute, asks: false, margins: false, confidence: false },
  { name: shippedChoice.name, policy: shippedChoice, asks: false, margins: true, confidence: true },
  { name: ASKING_TOO, policy: shippedChoice, asks: true, margins: true, confidence: true },
];

/** Every policy on the same simulated cases under the shipped stop rule, some under others as well. */
export function playPolicies(job: PolicyJob): PolicyResult {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, anyCarOnTheRoad(knowledge, job.seed));
  const costs = workshopCosts(knowledge);
  const uniform = seededUniform(job.seed + 1);
  const rules = byMargins(costs, [...new Set([costs.stop.margin, ...MARGINS])]);
  const shippedName = marginName(costs.stop.margin);
  const shipped = rules.filter((r) => r.name === shippedName);
  const confidence = { ...byConfidence(costs, 0.9, 0.03), name: CONFIDENT };
  const sums = new Map<string, Summed>();
  const notes = forecastNotes();
  for (let k = 0; k < job.cars; k++) {
    const car = drawCar(grounded, uniform);
    notes.begin(car);
    for (const { name, policy, asks, margins, confidence: untilSure } of WAYS) {
      // Dear to play, and steady: a quarter of the cases is enough.
      const quarter = k % 4 === 0;
      const stops = margins && quarter ? [...rules] : [...shipped];
      if (untilSure && quarter) stops.push(confidence);
      const only = asks ? undefined : ("checks" as const);
      const played = playUnder(grounded, car, policy, stops, {
        costs,
        only,
        uniform: seededUniform(car.seed),
        watch: (situation, open) => {
          if (name === ASKING_TOO && open.some((r) => r.name === shippedName)) notes.see(situation);
        },
      });
      stops.forEach((stop, at) => {
        const one = played[at] as PlayedCase;
        if (stop.name === shippedName) add(sums, stop, name, false, one);
        if (quarter) add(sums, stop, name, true, one);
      });
    }
    notes.end();
  }
  return { played: [...sums.values()], forecasts: notes.sums() };
}

type Summed = { -readonly [K in keyof PlayedCases]: PlayedCases[K] } & { readonly minutes: number[] };

function add(
  sums: Map<string, Summed>,
  stop: StopRule,
  policy: string,
  quarter: boolean,
  played: PlayedCase,
): void {
  const key = `${stop.name}\n${policy}\n${quarter}`;
  const own = sums.get(key) ?? {
    stop: stop.name,
    policy,
    quarter,
    minutes: [],
    checks: 0,
    setUpChanges: 0,
    wrong: 0,
    referred: 0,
    sure: 0,
    sureAndWrong: 0,
    repairMinutes: 0,
  };
  sums.set(key, own);
  own.minutes.push(played.minutes);
  own.checks += played.checks.length;
  own.setUpChanges += played.setUpChanges;
  if (!played.right) own.wrong += 1;
  if (played.verdict.kind === "refer") own.referred += 1;
  if (played.verdict.sure) own.sure += 1;
  if (played.verdict.sure && !played.right) own.sureAndWrong += 1;
  own.repairMinutes += played.repairMinutes;
}
