import type { Costs } from "../knowledge/schema/costs.ts";
import type { Answer } from "./answers.ts";
import { foreseenBatches, openFindings } from "./batch.ts";
import type { Grounded } from "./ground.ts";
import { type JointResult, jointGain, noResult, resultChances, splitResults } from "./joint-results.ts";
import type { Outlook } from "./outlook.ts";
import type { ProposedCheck } from "./propose.ts";

/** Making some checks: what it costs and what it is expected to save. Units: minutes. */
export interface CheckingOn {
  /** Reckoned by a rule of thumb: checking until it is known. */
  readonly rough?: boolean;
  readonly steps: readonly string[];
  readonly cost: number;
  readonly saves: number;
}

/** Information below this is not worth a trip to the car. */
export const WORTH_CHECKING = 0.03;
/** Checks whose saving is worked out. */
const LOOKED_AT = 25;
/** Most checks of a batch. */
const BATCH = 5;

/**
 * What each check, each batch of one set-up, and checking until it is known are expected to save; none without a check.
 *
 * `firstWorth` ends at the first that is worth it.
 */
export function checkingOn(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: readonly ProposedCheck[],
  outlook: Outlook,
  now: number,
  costs: Costs,
  firstWorth: boolean,
): CheckingOn[] {
  const saves = (results: readonly JointResult[]): number =>
    Math.max(
      0,
      results.reduce((sum, weights) => sum - outlook.costOf(weights), now),
    );
  const whole = toTheEnd(outlook, proposed, now);
  const out: CheckingOn[] = whole === undefined ? [] : [whole];
  if (firstWorth && whole !== undefined && isWorth(whole, costs)) return out;
  for (const way of [singleChecks, batchesOfSetUps]) {
    for (const made of way(grounded, answers, proposed, outlook, saves)) {
      out.push(made);
      if (firstWorth && isWorth(made, costs)) return out;
    }
  }
  return out;
}

/** What results are expected to save, by how likely they leave each cause. */
type Saves = (results: readonly JointResult[]) => number;

function* singleChecks(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: readonly ProposedCheck[],
  { components }: Outlook,
  saves: Saves,
): Generator<CheckingOn> {
  const settled = new Set(answers.flatMap((a) => (a.by === "check" ? [a.finding] : [])));
  const start = noResult(components);
  for (const check of proposed.filter((p) => p.kind === "check").slice(0, LOOKED_AT)) {
    const chances = resultChances(components, openFindings(grounded, check, settled));
    const cost = check.minutes + check.setUpMinutes;
    yield { steps: [check.id], cost, saves: saves(splitResults(start, chances)) };
  }
}

function* batchesOfSetUps(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: readonly ProposedCheck[],
  outlook: Outlook,
  saves: Saves,
): Generator<CheckingOn> {
  for (const batch of foreseenBatches(grounded, answers, proposed, outlook, BATCH)) {
    if (batch.checks.length < 2) continue;
    yield {
      steps: batch.checks.map((c) => c.check.id),
      cost: batch.minutes + batch.setUpMinutes,
      saves: saves(batch.results),
    };
  }
}

/**
 * Checking on until it is known: what is open yet at the rate of the best check, against what knowing would save.
 *
 * One check alone says little while many causes are about equally likely, although several would find the one. What comes
 * later tells less a minute than the best check now, so twice the time is reckoned with.
 */
function toTheEnd(outlook: Outlook, proposed: readonly ProposedCheck[], now: number): CheckingOn | undefined {
  const [best] = proposed;
  if (best === undefined || best.gainBits < WORTH_CHECKING) return undefined;
  const open = jointGain(
    outlook.components.map((c, k) =>
      new Float64Array(outlook.components.length).fill(c.probability, k, k + 1),
    ),
    outlook.values,
  );
  const known = outlook.components.reduce((sum, component, c) => {
    const alone = new Float64Array(outlook.components.length);
    alone[c] = component.probability;
    return sum + outlook.costOf(alone);
  }, 0);
  return { rough: true, steps: [best.id], cost: (2 * open) / best.score, saves: now - known };
}

/** Does it save more than the margin times what it costs? */
export function isWorth({ saves, cost }: CheckingOn, costs: Costs): boolean {
  return saves > costs.stop.margin * cost;
}
