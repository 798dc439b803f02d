import {
  byConfidence,
  byExpectedCost,
  chanceOverCost,
  fixedChecklist,
  gainAlone,
  likeliestFirst,
  type Policy,
  shippedChoice,
  type StopRule,
} from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import type { Costs } from "../../lib/knowledge/schema/costs.ts";
import { engineWay } from "../support/engine-way.ts";
import { type SmallInstance, smallInstance } from "../support/small-instance.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { smallCosts } from "../support/small-optimum.ts";
import type { OptimumJob, OptimumRow } from "./simulation-jobs.ts";

const MARGINS = [0.7, 1, 1.5, 2, 2.5, 3];

const WAYS: readonly (readonly [string, Policy, (costs: Costs) => StopRule])[] = [
  ["shipped", shippedChoice, (costs) => byExpectedCost(withMargin(costs, shippedMargin()))],
  ...MARGINS.map(
    (margin) =>
      [
        `shipped, margin ${margin}`,
        shippedChoice,
        (costs: Costs) => byExpectedCost(withMargin(costs, margin)),
      ] as const,
  ),
  ["shipped, confidence 0.9", shippedChoice, (costs) => byConfidence(costs, 0.9, 0.03)],
  ["gain alone", gainAlone, byExpectedCost],
  ["p/c", chanceOverCost, byExpectedCost],
  ["fixed checklist", fixedChecklist, byExpectedCost],
  ["likeliest suspect first", likeliestFirst, byExpectedCost],
];

/** Every way's cost over that of the optimum, on small random instances. */
export function againstOptimum(job: OptimumJob): OptimumRow[] {
  return job.seeds.flatMap((seed) => {
    const instance = smallInstance(seed);
    const exact = smallCosts(instance);
    const optimum = exact.optimum();
    const rows = WAYS.map(
      ([way, policy, stop]): OptimumRow => ({
        way,
        ratio: exact.of(engineWay(instance, policy, stop(instance.costs))) / optimum,
      }),
    );
    return [...rows, { way: "repair at once, no check", ratio: repairAtOnce(instance) / optimum }];
  });
}

/** Repairs in the order of the engine without any check. */
function repairAtOnce(instance: SmallInstance): number {
  const stop = byExpectedCost(instance.costs);
  const way = engineWay(
    instance,
    { name: "none", next: () => undefined },
    {
      name: "at once",
      verdict: (...given) => stop.atLast(...given),
      atLast: (...given) => stop.atLast(...given),
    },
  );
  return smallCosts(instance).of(way);
}

function shippedMargin(): number {
  return workshopCosts(shippedKnowledge()).stop.margin;
}

function withMargin(costs: Costs, margin: number): Costs {
  return { ...costs, stop: { ...costs.stop, margin } };
}
