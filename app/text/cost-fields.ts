import type { CostOverrides } from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { typedNumber } from "./amounts.ts";

/** One figure of what work costs that a workshop may replace. */
export interface CostField {
  readonly id: string;
  readonly name: string;
  readonly unit: "money" | "minutes" | "currency";
  /** The knowledge's own figure, as it stands in the field. */
  readonly usual: string;
  readonly least: number;
  readonly most: number;
}

const MOST_MONEY = 100_000;
const MOST_MINUTES = 10_000;
const BAND = "band ";

/** Every figure that a workshop may replace, with the knowledge's default. */
export function costFields({ costs }: Knowledge): CostField[] {
  const money = (id: string, name: string, usual: number, least = 0): CostField => ({
    id,
    name,
    unit: "money",
    usual: String(usual),
    least,
    most: MOST_MONEY,
  });
  const minutes = (id: string, name: string, usual: number): CostField => ({
    id,
    name,
    unit: "minutes",
    usual: String(usual),
    least: 0,
    most: MOST_MINUTES,
  });
  return [
    { id: "currency", name: "Currency", unit: "currency", usual: costs.currency, least: 0, most: 0 },
    // Not 0: minutes and money are turned into each other by it.
    money("hourlyRate", "An hour of work", costs.hourlyRate, 1),
    ...Object.entries(costs.bands)
      .filter(([, band]) => band.price > 0)
      .map(([id, band]) => money(`${BAND}${id}`, `A ${band.name}`, band.price)),
    minutes("verifyMinutes", "To see after a repair whether it is gone", costs.verifyMinutes),
    minutes("wrongPartMinutes", "Lost when the part was not at fault", costs.wrongPart.minutes),
    minutes("comebackMinutes", "When the car comes back with it", costs.comeback.minutes),
    minutes("referMinutes", "When others look for it", costs.refer.minutes),
    money("referFee", "What they charge on top", costs.refer.fee),
  ];
}

/** A workshop's own figures, and what is wrong with those that cannot be; the default holds for these. */
export interface OwnCosts {
  readonly own: CostOverrides;
  /** Field id -> what is wrong and how to mend it. */
  readonly problems: Readonly<Record<string, string>>;
}

/** Figures as typed, read: empty ones are left out. */
export function ownCosts(knowledge: Knowledge, typed: Readonly<Record<string, string>>): OwnCosts {
  const numbers: Record<string, number> = {};
  const prices: Record<string, number> = {};
  const problems: Record<string, string> = {};
  let currency: string | undefined;
  for (const field of costFields(knowledge)) {
    const text = typed[field.id]?.trim() ?? "";
    if (text === "") continue;
    if (field.unit === "currency") {
      if (/^[A-Za-z]{3}$/.test(text)) currency = text.toUpperCase();
      else problems[field.id] = `"${text}" is no currency: give its three letters, such as ${field.usual}.`;
      continue;
    }
    const number = typedNumber(text);
    if (number === undefined || number < field.least || number > field.most) {
      problems[field.id] =
        `"${text}" cannot be: give a number from ${field.least} to ${field.most}. Until then ${field.usual} counts.`;
    } else if (field.id.startsWith(BAND)) prices[field.id.slice(BAND.length)] = number;
    else numbers[field.id] = number;
  }
  return { own: { ...numbers, prices, ...(currency !== undefined && { currency }) }, problems };
}

/** An amount of money, whole. */
export function moneyWords(amount: number, currency: string): string {
  return new Intl.NumberFormat("en-GB", { style: "currency", currency, maximumFractionDigits: 0 }).format(
    amount,
  );
}
