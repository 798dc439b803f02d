import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Costs } from "../knowledge/schema/costs.ts";
import type { Grounded } from "./ground.ts";
import type { RepairPrices } from "./repair-order.ts";
import type { Suspect } from "./suspect.ts";

/** Figures of a workshop that go before those of the knowledge; what is left out stays. */
export interface CostOverrides {
  readonly currency?: string | undefined;
  readonly hourlyRate?: number | undefined;
  /** Band id -> price. */
  readonly prices?: Readonly<Record<string, number>> | undefined;
  readonly verifyMinutes?: number | undefined;
  readonly wrongPartMinutes?: number | undefined;
  readonly comebackMinutes?: number | undefined;
  readonly referMinutes?: number | undefined;
  readonly referFee?: number | undefined;
}

/** The costs of the knowledge with a workshop's own figures over them. */
export function workshopCosts(knowledge: Knowledge, own: CostOverrides = {}): Costs {
  const { costs } = knowledge;
  const bands = Object.entries(costs.bands).map(([id, band]) => [
    id,
    { ...band, price: own.prices?.[id] ?? band.price },
  ]);
  return {
    ...costs,
    currency: own.currency ?? costs.currency,
    hourlyRate: own.hourlyRate ?? costs.hourlyRate,
    bands: Object.fromEntries(bands),
    verifyMinutes: own.verifyMinutes ?? costs.verifyMinutes,
    wrongPart: { minutes: own.wrongPartMinutes ?? costs.wrongPart.minutes },
    comeback: { ...costs.comeback, minutes: own.comebackMinutes ?? costs.comeback.minutes },
    refer: {
      minutes: own.referMinutes ?? costs.refer.minutes,
      fee: own.referFee ?? costs.refer.fee,
    },
  };
}

/** The repair that mends a suspect: the same part at the same place is one repair, whatever is wrong with it. */
export function repairOf(grounded: Grounded, suspect: number): string {
  return repairOfSuspect(grounded.suspects[suspect] ?? { part: "", place: "" });
}

/** As `repairOf`, of the suspect itself: `part@place`. */
export function repairOfSuspect({ part, place }: Pick<Suspect, "part" | "place">): string {
  return `${part}@${place}`;
}

/** Work and part of mending one fault. Units: minutes; price in the currency of the costs. */
export function remedyCost(
  grounded: Grounded,
  costs: Costs,
  suspect: number,
): { readonly minutes: number; readonly price: number } {
  const { fault: faultId, part: partId } = grounded.suspects[suspect] ?? { fault: "", part: "" };
  const fault = grounded.faults.get(faultId);
  const group = grounded.knowledge.parts.find((p) => p.id === partId)?.group ?? "";
  const named = [
    [costs.byKind, fault?.kind ?? ""],
    [costs.byPart, partId],
    [costs.byGroup, group],
  ] as const;
  const found = named.find(([table, key]) => Object.hasOwn(table, key));
  const band = found === undefined ? costs.otherwise : (found[0][found[1]] ?? costs.otherwise);
  return { minutes: fault?.remedy.minutes ?? 0, price: costs.bands[band]?.price ?? 0 };
}

/** Money as the minutes of work that cost as much. */
export function asMinutes(costs: Costs, money: number): number {
  return (60 * money) / costs.hourlyRate;
}

/** Minutes as money. */
export function asMoney(costs: Costs, minutes: number): number {
  return (costs.hourlyRate * minutes) / 60;
}

/** Repairs that are worth considering, and what they cost. */
export interface PricedRepairs {
  /** `part@place`, by the index that prices go by. */
  readonly repairs: readonly string[];
  readonly index: ReadonlyMap<string, number>;
  /** Units: minutes, money turned into them. */
  readonly prices: RepairPrices;
}

/**
 * Prices the repairs of some suspects; a repair of several faults costs the mean of their remedies by their weights.
 *
 * Units: minutes; `weight` gives each suspect's chance, or anything in proportion to it.
 */
export function priceRepairs(
  grounded: Grounded,
  costs: Costs,
  suspects: readonly number[],
  weight: (suspect: number) => number,
): PricedRepairs {
  const sums = new Map<string, { cost: number; weight: number }>();
  for (const suspect of suspects) {
    const { minutes, price } = remedyCost(grounded, costs, suspect);
    const own = Math.max(weight(suspect), 1e-12);
    const sum = sums.get(repairOf(grounded, suspect)) ?? { cost: 0, weight: 0 };
    sums.set(repairOf(grounded, suspect), {
      cost: sum.cost + own * (minutes + asMinutes(costs, price)),
      weight: sum.weight + own,
    });
  }
  const repairs = [...sums.keys()].sort();
  const right = repairs.map((id) => {
    const { cost, weight: total } = sums.get(id) ?? { cost: 0, weight: 1 };
    return cost / total + costs.verifyMinutes;
  });
  return {
    repairs,
    index: new Map(repairs.map((id, i) => [id, i])),
    prices: {
      right,
      wrong: right.map((cost) => cost + costs.wrongPart.minutes),
      notCured: costs.comeback.chance * costs.comeback.minutes,
      refer: costs.refer.minutes + asMinutes(costs, costs.refer.fee),
      mend: right,
    },
  };
}
