import type { Costs } from "../knowledge/schema/costs.ts";
import type { Component, Explanation } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import type { Weighing } from "./weigh.ts";
import { type PricedRepairs, priceRepairs, repairOf } from "./repair-cost.ts";
import { type PossibleCauses, referralCost, type RepairPlan, repairPlan } from "./repair-order.ts";

/** What may be behind the complaint, with what mending it costs. */
export interface Outlook {
  /** The mixture that results of checks are foreseen with. */
  readonly components: readonly Component[];
  readonly priced: PricedRepairs;
  /** Chance that each repair is needed, aligned to `priced.repairs`. */
  readonly chances: Float64Array;
  /** One value for each set of repairs, aligned to the components: causes that are mended alike need not be told apart. */
  readonly values: Int32Array;
  /** Repair plan as things stand. */
  readonly plan: RepairPlan;
  /** Expected cost of handing over as things stand. Units: minutes. */
  readonly referral: number;
  /** Cost of the better of repairing and handing over, when the components have these weights. Units: minutes. */
  costOf(weights: Float64Array): number;
}

/** Causes whose chances given each are worked out exactly; the core may hold it lower. */
const EXACT = 24;
/** Further causes and pairs of them, with chances that are near enough. */
const MOST_MORE = 24;
const SMALLEST_MORE = 0.002;

/** The outlook after the answers so far. */
export function repairOutlook(grounded: Grounded, weighing: Weighing, costs: Costs): Outlook | undefined {
  const { explanation, assembled } = weighing;
  if (explanation === undefined) return undefined;
  const components = finerComponents(explanation);
  const suspects = [...new Set(components.flatMap((c) => c.set))];
  const priced = priceRepairs(grounded, costs, suspects, (i) => explanation.involved[i] ?? 0);
  const cures = components.map((c) =>
    c.kind === "set"
      ? [...new Set(c.set.map((i) => priced.index.get(repairOf(grounded, i)) ?? 0))]
      : undefined,
  );
  // Whatever fired, causes outside the knowledge may have fired as well: then repairing those known does not cure it.
  const alone = assembled.targets.reduce(
    (quiet, k) => quiet * (1 - (assembled.evidence.positives[k]?.leak ?? 0)),
    1,
  );
  const causesWith = (probability: ArrayLike<number>): PossibleCauses => ({
    cures,
    probability,
    curedShare: alone,
  });
  const { prices } = priced;
  const better = (weights: ArrayLike<number>): number => {
    const causes = causesWith(weights);
    return Math.min(repairPlan(causes, prices).cost, referralCost(causes, prices));
  };
  const chances = new Float64Array(priced.repairs.length);
  components.forEach((c, k) => {
    for (const repair of cures[k] ?? []) chances[repair] = (chances[repair] ?? 0) + c.probability;
  });
  const now = causesWith(components.map((c) => c.probability));
  return {
    components,
    values: valuesOf(components, cures),
    priced,
    chances,
    plan: repairPlan(now, prices),
    referral: referralCost(now, prices),
    costOf: better,
  };
}

function valuesOf(components: readonly Component[], cures: PossibleCauses["cures"]): Int32Array {
  const values = new Map<string, number>();
  return Int32Array.from(components, ({ kind }, c) => {
    const own = cures[c]?.toSorted((a, b) => a - b);
    const key = own === undefined ? kind : `repairs ${own.join(" ")}`;
    const value = values.get(key) ?? values.size;
    values.set(key, value);
    return value;
  });
}

/**
 * The core's components with further causes and pairs taken out of the rest, so that what a check could prove of them counts.
 *
 * Their rows are those with the target silent and the causes set to certain: exact but for what ties them to other suspects.
 */
function finerComponents(explanation: Explanation): Component[] {
  const base = explanation.components(EXACT);
  const rest = base.find((c) => c.kind === "rest");
  const silent = base.find((c) => c.kind === "none")?.marginals;
  if (rest === undefined || silent === undefined) return [...base];
  const named = new Set(base.map((c) => c.set.join(" ")));
  const more = [
    ...Array.from(explanation.singles, (probability, i) => ({ set: [i], probability })),
    ...explanation.pairs.map(({ i, j, probability }) => ({ set: [i, j], probability })),
  ]
    .filter(({ set, probability }) => probability >= SMALLEST_MORE && !named.has(set.join(" ")))
    .sort((a, b) => b.probability - a.probability)
    .slice(0, MOST_MORE)
    .map(({ set, probability }): Component => {
      const marginals = silent.slice();
      for (const i of set) marginals[i] = 1;
      return { set, kind: "set", probability, marginals };
    });
  const others = base.filter((c) => c !== rest);
  const left = more.reduce((sum, c) => sum - c.probability, rest.probability);
  if (left <= 1e-12) return [...others, ...more];
  const row = rest.marginals.map((marginal, i) => {
    const mass = more.reduce(
      (sum, c) => sum - c.probability * (c.marginals[i] ?? 0),
      rest.probability * marginal,
    );
    return Math.min(1, Math.max(0, mass / left));
  });
  return [...others, ...more, { ...rest, probability: left, marginals: row }];
}
