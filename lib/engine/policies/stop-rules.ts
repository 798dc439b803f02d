import type { Costs } from "../../knowledge/schema/costs.ts";
import { type Decision, decideNext } from "../decide.ts";
import { repairOf } from "../repair-cost.ts";
import type { Situation, StopRule, Verdict } from "./policy.ts";

/** The shipped rule: stop when no check is expected to save more than the margin times its minutes. */
export function byExpectedCost(costs: Costs): StopRule {
  const decide = (situation: Situation, proposed: Situation["proposed"]): Decision =>
    decideNext(situation.grounded, situation.answers, situation.weighing, proposed, {
      costs,
      firstWorth: true,
    });
  return {
    name: "expected cost",
    verdict: (situation) => {
      const decision = decide(situation, situation.proposed);
      return decision.kind === "check" ? undefined : verdictOf(decision);
    },
    atLast: (situation) => verdictOf(decide(situation, [])),
  };
}

/** Name of the rule that stops by expected cost with a margin of its own. */
export function marginName(margin: number): string {
  return `expected cost, margin ${margin}`;
}

/**
 * The shipped rule with each of some margins, the largest first, for playing one search under all of them.
 *
 * One that goes on spares those of smaller margins the work: what is worth it to it is worth it to them.
 */
export function byMargins(costs: Costs, margins: readonly number[]): StopRule[] {
  let goesOn: Situation | undefined;
  return margins
    .toSorted((a, b) => b - a)
    .map((margin) => {
      const rule = byExpectedCost({ ...costs, stop: { ...costs.stop, margin } });
      return {
        name: marginName(margin),
        verdict: (situation) => {
          if (goesOn === situation) return undefined;
          const verdict = rule.verdict(situation);
          if (verdict === undefined) goesOn = situation;
          return verdict;
        },
        atLast: (situation) => rule.atLast(situation),
      };
    });
}

/** Stop at a repair that is likely enough, or when no check tells as much as the least information. */
export function byConfidence(costs: Costs, confidence: number, leastBits: number): StopRule {
  const decide = (situation: Situation): Decision =>
    decideNext(situation.grounded, situation.answers, situation.weighing, [], { costs });
  return {
    name: `confidence ${confidence}`,
    verdict: (situation) => {
      if (likeliestRepair(situation) >= confidence) return { ...verdictOf(decide(situation)), sure: true };
      const tells = situation.proposed.some((p) => p.gainBits >= leastBits);
      return tells ? undefined : { ...verdictOf(decide(situation)), sure: false };
    },
    atLast: (situation) => ({ ...verdictOf(decide(situation)), sure: false }),
  };
}

/** Chance of the likeliest repair, summed over its faults: near enough, and cheap. */
function likeliestRepair({ grounded, weighing }: Situation): number {
  const chances = new Map<string, number>();
  for (const { suspect, explains } of weighing.weighed.ranking) {
    if (explains < 0.01) break;
    const repair = repairOf(grounded, suspect.index);
    chances.set(repair, (chances.get(repair) ?? 0) + explains);
  }
  return Math.min(1, Math.max(0, ...chances.values()));
}

function verdictOf(decision: Decision): Verdict {
  const [likeliest] = decision.repairs;
  const order = decision.choices.find((c) => c.way === "repair")?.steps ?? [];
  if (decision.kind !== "repair" || likeliest === undefined) {
    return { kind: "refer", repair: undefined, chance: 0, order: [], sure: false };
  }
  return { kind: "repair", repair: likeliest.repair, chance: likeliest.chance, order, sure: decision.sure };
}
