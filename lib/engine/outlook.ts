import type { Costs } from "../knowledge/schema/costs.ts";
import type { Component } from "./core/index.ts";
import { finerComponents } from "./finer-components.ts";
import type { Grounded } from "./ground.ts";
import type { Weighing } from "./weigh.ts";
import { type PricedRepairs, priceRepairs, repairOf } from "./repair-cost.ts";
import { type PossibleCauses, type RepairPlan, repairPlan } from "./repair-order.ts";

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
    const { cost, referral } = repairPlan(causesWith(weights), prices);
    return Math.min(cost, referral);
  };
  const chances = new Float64Array(priced.repairs.length);
  components.forEach((c, k) => {
    for (const repair of cures[k] ?? []) chances[repair] = (chances[repair] ?? 0) + c.probability;
  });
  const plan = repairPlan(causesWith(components.map((c) => c.probability)), prices);
  return {
    components,
    values: valuesOf(components, cures),
    priced,
    chances,
    plan,
    referral: plan.referral,
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
