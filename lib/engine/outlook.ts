import type { Costs } from "../knowledge/schema/costs.ts";
import type { Component, Explanation } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import { type PricedRepairs, priceRepairs, repairOf } from "./repair-cost.ts";
import { type PossibleCauses, type RepairPlan, repairPlan } from "./repair-order.ts";

/** What may be behind the complaint, with what mending it costs. */
export interface Outlook {
  /** The mixture that results of checks are foreseen with. */
  readonly components: readonly Component[];
  readonly causes: PossibleCauses;
  readonly priced: PricedRepairs;
  /** Repair plan as things stand. */
  readonly plan: RepairPlan;
  /** Cost of the better of repairing and handing over, when the components have these weights. Units: minutes. */
  costOf(weights: Float64Array): number;
}

/** Causes whose chances given each are worked out exactly; the core may hold it lower. */
const EXACT = 24;
/** Further single causes, with chances that are near enough. */
const MOST_MORE = 24;
const SMALLEST_MORE = 0.002;

/** The outlook after the answers so far. */
export function repairOutlook(grounded: Grounded, explanation: Explanation, costs: Costs): Outlook {
  const components = finerComponents(explanation);
  const suspects = [...new Set(components.flatMap((c) => c.set))];
  const priced = priceRepairs(grounded, costs, suspects, (i) => explanation.involved[i] ?? 0);
  const cures = components.map((c) =>
    c.kind === "set"
      ? [...new Set(c.set.map((i) => priced.index.get(repairOf(grounded, i)) ?? 0))]
      : undefined,
  );
  const better = (probability: Float64Array): number => {
    const total = probability.reduce((sum, p) => sum + p, 0);
    return Math.min(repairPlan({ cures, probability }, priced.prices).cost, total * priced.prices.refer);
  };
  const causes = { cures, probability: Float64Array.from(components, (c) => c.probability) };
  return { components, causes, priced, plan: repairPlan(causes, priced.prices), costOf: better };
}

/**
 * The core's components with further single causes taken out of the rest, so that what a check could prove of them counts.
 *
 * Their rows are those with the target silent and the cause set to certain: exact but for what ties it to other suspects.
 */
function finerComponents(explanation: Explanation): Component[] {
  const base = explanation.components(EXACT);
  const rest = base.find((c) => c.kind === "rest");
  const silent = base.find((c) => c.kind === "none")?.marginals;
  if (rest === undefined || silent === undefined) return [...base];
  const named = new Set(base.flatMap((c) => (c.set.length === 1 ? c.set : [])));
  const more = Array.from(explanation.singles, (probability, i) => ({ i, probability }))
    .filter(({ i, probability }) => probability >= SMALLEST_MORE && !named.has(i))
    .sort((a, b) => b.probability - a.probability || a.i - b.i)
    .slice(0, MOST_MORE)
    .map(
      ({ i, probability }): Component => ({
        set: [i],
        kind: "set",
        probability,
        marginals: silent.with(i, 1),
      }),
    );
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
