/** What may be behind the complaint, one entry for each way in which it may have come about; together they have chance 1. */
export interface PossibleCauses {
  /** Repairs that together cure it, by index; undefined when no repair that is known of does. */
  readonly cures: readonly (readonly number[] | undefined)[];
  readonly probability: ArrayLike<number>;
}

/** What repairs cost, all in one unit. */
export interface RepairPrices {
  /** Cost of repair i where it was needed: looking, work, part, seeing that it is gone. */
  readonly right: ArrayLike<number>;
  /** Cost of repair i where it was not needed. */
  readonly wrong: ArrayLike<number>;
  /** Expected cost of each repair after which the complaint is still there, on top. */
  readonly notCured: number;
  /** Cost of handing it over when the repairs that pay have not cured it. */
  readonly refer: number;
}

/** Repairs in the order in which to make them, as far as that is cheaper than handing over. */
export interface RepairPlan {
  readonly order: readonly number[];
  /** Expected cost of making them until it is cured, and of handing over when it never is. */
  readonly cost: number;
  /** Chance that they cure it. */
  readonly cures: number;
}

/**
 * Expected cost of making repairs in a given order, one at a time until the complaint is gone, then of handing over.
 *
 * Source: Heckerman, Breese and Rommelse 1995, from memory: sum of (1 - p of those before) * cost of looking + p * cost of
 * mending; here over sets of causes, with a cost for what is left.
 */
export function expectedRepairCost(
  order: readonly number[],
  causes: PossibleCauses,
  prices: RepairPrices,
): number {
  return prefixCosts(order, causes, prices).at(-1)?.cost ?? 0;
}

/**
 * The order of repairs by chance over cost, cut where handing over becomes cheaper; at least one repair, if there is any.
 *
 * With one cause at a time and repairs that always cure, the order is the best one.
 * Source: Kalagnanam and Henrion 1988 (after Kadane and Simon 1975): largest p/c first.
 */
export function repairPlan(causes: PossibleCauses, prices: RepairPrices): RepairPlan {
  const order = byChanceOverCost(causes, prices);
  const prefixes = prefixCosts(order, causes, prices);
  let best = Math.min(1, order.length);
  for (let count = best + 1; count <= order.length; count++) {
    if ((prefixes[count]?.cost ?? 0) < (prefixes[best]?.cost ?? 0)) best = count;
  }
  const { cost, left } = prefixes[best] ?? { cost: prices.refer, left: 1 };
  return { order: order.slice(0, best), cost, cures: 1 - left };
}

/** Every repair that can help, largest chance over cost first; ties by index. */
export function byChanceOverCost(causes: PossibleCauses, prices: RepairPrices): number[] {
  const chance = new Map<number, number>();
  causes.cures.forEach((cures, c) => {
    for (const repair of cures ?? [])
      chance.set(repair, (chance.get(repair) ?? 0) + (causes.probability[c] ?? 0));
  });
  const ratio = new Map(
    [...chance].map(([repair, p]) => [repair, p / ((prices.wrong[repair] ?? 0) + prices.notCured)]),
  );
  return [...chance.keys()]
    .filter((repair) => (chance.get(repair) ?? 0) > 0)
    .sort((a, b) => (ratio.get(b) ?? 0) - (ratio.get(a) ?? 0) || a - b);
}

/** Expected cost, and chance that it is not cured, after the first 0, 1, 2 ... repairs of the order. */
function prefixCosts(
  order: readonly number[],
  causes: PossibleCauses,
  prices: RepairPrices,
): { cost: number; left: number }[] {
  const open = causes.cures.map((cures) => (cures === undefined ? Number.POSITIVE_INFINITY : cures.length));
  const uses = new Map<number, number[]>();
  let total = 0;
  causes.cures.forEach((cures, c) => {
    total += causes.probability[c] ?? 0;
    for (const repair of cures ?? []) uses.set(repair, [...(uses.get(repair) ?? []), c]);
  });
  let left = total;
  let spent = 0;
  const out = [{ cost: left * prices.refer, left }];
  for (const repair of order) {
    const own = uses.get(repair) ?? [];
    const needed = own.reduce((sum, c) => sum + (causes.probability[c] ?? 0), 0);
    spent += needed * (prices.right[repair] ?? 0);
    spent += Math.max(0, left - needed) * (prices.wrong[repair] ?? 0);
    for (const c of own) {
      open[c] = (open[c] ?? 1) - 1;
      if (open[c] === 0) left -= causes.probability[c] ?? 0;
    }
    left = Math.max(0, left);
    spent += left * prices.notCured;
    out.push({ cost: spent + left * prices.refer, left });
  }
  return out;
}
