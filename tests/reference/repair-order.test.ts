import { describe, expect, test } from "vitest";
import {
  byChanceOverCost,
  expectedRepairCost,
  type PossibleCauses,
  repairPlan,
  type RepairPrices,
} from "../../lib/engine/repair-order.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";

/*
 * Formula: Heckerman, Breese and Rommelse 1995 (form from memory): sum of (1 - p of those before) * cost of looking
 * + p * cost of mending. Order by p/c: Kalagnanam and Henrion 1988. The numbers of the worked cases are our own; their
 * answers were worked apart from this code (references F6).
 */
function singleFaults(
  p: readonly number[],
  look: readonly number[],
  mend: readonly number[],
  refer = 0,
): { causes: PossibleCauses; prices: RepairPrices } {
  const unknown = 1 - p.reduce((sum, x) => sum + x, 0);
  return {
    causes: { cures: [...p.map((_, i) => [i]), undefined], probability: [...p, unknown] },
    prices: { right: look.map((c, i) => c + mend[i]!), wrong: look, notCured: 0, refer },
  };
}

function orders(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((first) => orders(items.filter((i) => i !== first)).map((rest) => [first, ...rest]));
}

/** Orders are written from 1, as in the worked cases. */
const from1 = (order: readonly number[]): string => order.map((i) => i + 1).join(",");

describe("four causes, each certain to be found by looking", () => {
  const { causes, prices } = singleFaults([0.4, 0.3, 0.2, 0.1], [20, 5, 10, 1], [100, 60, 40, 10]);
  const all = orders([0, 1, 2, 3]).map((order) => ({
    order: from1(order),
    cost: expectedRepairCost(order, causes, prices),
  }));

  test("the best order costs 86.5 and is that of p/c; two ratios are equal, so two orders tie", () => {
    const best = Math.min(...all.map((o) => o.cost));
    expect(best).toBeCloseTo(86.5, 9);
    expect(
      all
        .filter((o) => o.cost < best + 1e-9)
        .map((o) => o.order)
        .sort(),
    ).toEqual(["4,2,1,3", "4,2,3,1"]);
    expect(["4,2,1,3", "4,2,3,1"]).toContain(from1(byChanceOverCost(causes, prices)));
    expect(expectedRepairCost(byChanceOverCost(causes, prices), causes, prices)).toBeCloseTo(86.5, 9);
  });

  test("the worst order costs 95.1, that by chance alone 93.1", () => {
    const worst = Math.max(...all.map((o) => o.cost));
    expect(worst).toBeCloseTo(95.1, 9);
    // 1 and 3 have equal ratios, so that 1,3,2,4 costs as much.
    const dearest = all.filter((o) => o.cost > worst - 1e-9).map((o) => o.order);
    expect(dearest.sort()).toEqual(["1,3,2,4", "3,1,2,4"]);
    expect(expectedRepairCost([0, 1, 2, 3], causes, prices)).toBeCloseTo(93.1, 9);
  });
});

describe("repairs that may leave it unmended, 0.05, and then a service call for 200", () => {
  const { causes, prices } = singleFaults([0.45, 0.25, 0.15, 0.1], [40, 10, 30, 5], [0, 0, 0, 0], 200);
  const all = orders([0, 1, 2, 3]).map((order) => ({
    order: from1(order),
    cost: expectedRepairCost(order, causes, prices),
  }));

  test("the best order is 2,4,1,3 with 55.75; the worst costs 79.0", () => {
    expect(all.reduce((a, b) => (b.cost < a.cost ? b : a))).toEqual({
      order: "2,4,1,3",
      cost: expect.closeTo(55.75, 9),
    });
    expect(Math.max(...all.map((o) => o.cost))).toBeCloseTo(79, 9);
    expect(from1(byChanceOverCost(causes, prices))).toBe("2,4,1,3");
  });
});

/* Source: the theorem of Kalagnanam and Henrion 1988, against every order of 2 to 6 parts. */
test("with one cause at a time the order by p/c is the best of all orders, whatever mending costs", () => {
  const uniform = seededUniform(61);
  for (let round = 0; round < 300; round++) {
    const count = 2 + Math.floor(uniform() * (round % 10 === 0 ? 5 : 4));
    const weights = Array.from({ length: count }, () => 0.05 + uniform());
    const sum = weights.reduce((a, b) => a + b, 0);
    const { causes, prices } = singleFaults(
      weights.map((w) => w / sum),
      weights.map(() => 1 + 40 * uniform()),
      weights.map(() => 100 * uniform()),
    );
    const best = Math.min(
      ...orders(weights.map((_, i) => i)).map((order) => expectedRepairCost(order, causes, prices)),
    );
    expect(expectedRepairCost(byChanceOverCost(causes, prices), causes, prices)).toBeCloseTo(best, 9);
  }
});

describe("where to stop repairing", () => {
  test("a repair that costs more than it saves is left out: handing over is cheaper", () => {
    const { causes, prices } = singleFaults([0.6, 0.01], [30, 90], [0, 0], 100);
    // Second repair: costs 0.4 * 90 = 36 and saves 0.01 * 100 = 1.
    expect(repairPlan(causes, prices)).toEqual({
      order: [0],
      cost: expect.closeTo(30 + 0.4 * 100, 9),
      cures: expect.closeTo(0.6, 9),
      referral: expect.closeTo(100, 9),
    });
  });

  test("two causes at once need both repairs; a needless one costs its own price, a comeback is paid while uncured", () => {
    const causes: PossibleCauses = { cures: [[0], [0, 1], undefined], probability: [0.5, 0.3, 0.2] };
    const prices: RepairPrices = { right: [10, 20], wrong: [15, 25], notCured: 4, refer: 50 };
    // First: 0.8 * 10 + 0.2 * 15, comeback 0.5 * 4. Second: 0.3 * 20 + 0.2 * 25, comeback 0.2 * 4. Then 0.2 * 50.
    expect(expectedRepairCost([0, 1], causes, prices)).toBeCloseTo(8 + 3 + 2 + 6 + 5 + 0.8 + 10, 9);
    expect(expectedRepairCost([0], causes, prices)).toBeCloseTo(8 + 3 + 2 + 25, 9);
    expect(expectedRepairCost([], causes, prices)).toBeCloseTo(50, 9);
    const plan = repairPlan(causes, prices);
    expect(plan.order).toEqual([0, 1]);
    expect(plan.referral).toBeCloseTo(50, 9);
  });

  test("nothing to repair: handing over is all there is", () => {
    const prices: RepairPrices = { right: [], wrong: [], notCured: 0, refer: 50 };
    expect(repairPlan({ cures: [undefined], probability: [1] }, prices)).toEqual({
      order: [],
      cost: 50,
      cures: 0,
      referral: 50,
    });
  });
});
