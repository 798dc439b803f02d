/** What may be behind the complaint, one entry for each way in which it may have come about; together they have chance 1. */
export interface PossibleCauses {
  /** Repairs that together cure it, by index; undefined when no repair that is known of does. */
  readonly cures: readonly (readonly number[] | undefined)[];
  readonly probability: ArrayLike<number>;
  /** Share of each that its repairs cure; the rest has a further cause that is not known. All of it when left out. */
  readonly curedShare?: number | undefined;
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
  /** What repair i costs when it is made after handing over, on top; nothing when left out. */
  readonly mend?: ArrayLike<number> | undefined;
}

/** Repairs in the order in which to make them, as far as that is cheaper than handing over. */
export interface RepairPlan {
  readonly order: readonly number[];
  /** Expected cost of making them until it is cured, and of handing over when it never is. */
  readonly cost: number;
  /** Chance that they cure it. */
  readonly cures: number;
  /** Expected cost of handing over at once instead, as `referralCost`. */
  readonly referral: number;
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

/** Expected cost of handing over at once: finding it, and the repairs that it then takes. */
export function referralCost(causes: PossibleCauses, prices: RepairPrices): number {
  return prefixCosts([], causes, prices)[0]?.cost ?? 0;
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
  const { cost, left } = prefixes[best] as { cost: number; left: number };
  return { order: order.slice(0, best), cost, cures: 1 - left, referral: prefixes[0]?.cost ?? 0 };
}

/** Every repair that can help, largest chance over cost first; ties by index. */
export function byChanceOverCost(causes: PossibleCauses, prices: RepairPrices): number[] {
  const ratio = new Float64Array(prices.wrong.length);
  const order: number[] = [];
  for (let c = 0; c < causes.cures.length; c++) {
    const p = causes.probability[c] as number;
    for (const repair of causes.cures[c] ?? []) {
      if (p > 0 && ratio[repair] === 0) order.push(repair);
      ratio[repair] = (ratio[repair] as number) + p;
    }
  }
  for (const repair of order)
    ratio[repair] = (ratio[repair] as number) / ((prices.wrong[repair] as number) + prices.notCured);
  return order.sort((a, b) => (ratio[b] as number) - (ratio[a] as number) || a - b);
}

/** Expected cost, and chance that it is not cured, after the first 0, 1, 2 ... repairs of the order. */
function prefixCosts(
  order: readonly number[],
  causes: PossibleCauses,
  prices: RepairPrices,
): { cost: number; left: number }[] {
  const { cures, probability, curedShare = 1 } = causes;
  const { mend } = prices;
  const { counts, uses } = usesOf(cures);
  const open = counts.slice();
  let left = 0;
  let toMend = 0;
  for (let c = 0; c < cures.length; c++) {
    const p = probability[c] as number;
    if (p === 0) continue;
    left += p;
    if (mend === undefined) continue;
    for (const repair of cures[c] ?? []) toMend += p * (mend[repair] as number);
  }
  let spent = 0;
  const out = [{ cost: left * prices.refer + toMend, left }];
  for (const repair of order) {
    let needed = 0;
    let cured = 0;
    for (const c of uses.get(repair) ?? []) {
      const p = probability[c] as number;
      needed += p;
      open[c] = (open[c] as number) - 1;
      if (open[c] === 0) cured += p * curedShare;
    }
    spent += needed * (prices.right[repair] as number);
    spent += Math.max(0, left - needed) * (prices.wrong[repair] as number);
    left = Math.max(0, left - cured);
    if (mend !== undefined) toMend = Math.max(0, toMend - needed * (mend[repair] as number));
    spent += left * prices.notCured;
    out.push({ cost: spent + left * prices.refer + toMend, left });
  }
  return out;
}

interface Uses {
  /** Repairs that each cause needs. */
  readonly counts: Int32Array;
  /** Causes that need each repair, in their order. */
  readonly uses: ReadonlyMap<number, readonly number[]>;
}

/** The same causes are priced many times, with other chances each time. */
const USES = new WeakMap<PossibleCauses["cures"], Uses>();

function usesOf(cures: PossibleCauses["cures"]): Uses {
  const kept = USES.get(cures);
  if (kept !== undefined) return kept;
  const uses = new Map<number, number[]>();
  cures.forEach((repairs, c) => {
    for (const repair of repairs ?? []) {
      const list = uses.get(repair) ?? [];
      uses.set(repair, list);
      list.push(c);
    }
  });
  const made = { counts: Int32Array.from(cures, (repairs) => repairs?.length ?? 0), uses };
  USES.set(cures, made);
  return made;
}
