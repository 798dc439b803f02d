import type { Situation } from "../../lib/engine/policies/index.ts";
import { firedSuspects, type SimulatedCar } from "../../lib/engine/simulate/index.ts";
import type { BinSums } from "../../lib/maths/brier.ts";

/** Sums of the forecasts that lie in one tenth, 0 to 9. */
export interface TenthSums extends BinSums {
  readonly tenth: number;
}

/** Chances given to suspects, with what was true, by tenths of the chance. */
export interface ForecastSums {
  /** Explains the complaint, when nothing but the complaint is told. */
  readonly told: readonly TenthSums[];
  /** Explains the complaint, at the verdict. */
  readonly verdict: readonly TenthSums[];
  /** Explains the complaint: each suspect counts in every tenth that it ever comes into, with its chance when it did so first. */
  readonly everGiven: readonly TenthSums[];
  /** Is there at all, at the verdict. */
  readonly present: readonly TenthSums[];
}

/** What is forecast, by the key of its sums. */
export const FORECASTS: readonly (readonly [keyof ForecastSums, string])[] = [
  ["told", "explains the complaint, as told"],
  ["verdict", "explains the complaint, at the verdict"],
  ["everGiven", "explains the complaint, when the tenth is first given"],
  ["present", "is there at all, at the verdict"],
];
/** Tenth in which a chance lies: 0 to 9. */
export function tenthOf(chance: number): number {
  return Math.min(9, Math.floor(10 * chance));
}

/** Forecasts of some cases, added up. */
export interface ForecastNotes {
  /** A case of this car begins. */
  readonly begin: (car: SimulatedCar) => void;
  /** The case as it stands; the last one counts as its verdict. */
  readonly see: (situation: Situation) => void;
  /** Takes in the verdict of the case that was begun. */
  readonly end: () => void;
  readonly sums: () => ForecastSums;
}

/** An empty sheet for forecasts. */
export function forecastNotes(): ForecastNotes {
  const sheets = { told: tenths(), verdict: tenths(), everGiven: tenths(), present: tenths() };
  let car: SimulatedCar | undefined;
  let fired = new Set<number>();
  let seen = new Set<number>();
  let last: Situation | undefined;
  return {
    begin: (begun) => {
      car = begun;
      fired = new Set(firedSuspects(begun));
      seen = new Set();
      last = undefined;
    },
    see: (situation) => {
      for (const { suspect, explains } of situation.weighing.weighed.ranking) {
        const came = fired.has(suspect.index) ? 1 : 0;
        if (last === undefined) add(sheets.told, explains, came);
        const key = 10 * suspect.index + tenthOf(explains);
        if (seen.has(key)) continue;
        seen.add(key);
        add(sheets.everGiven, explains, came);
      }
      last = situation;
    },
    end: () => {
      for (const { suspect, explains, present } of last?.weighing.weighed.ranking ?? []) {
        add(sheets.verdict, explains, fired.has(suspect.index) ? 1 : 0);
        add(sheets.present, present, car?.present[suspect.index] === 1 ? 1 : 0);
      }
    },
    sums: () => ({
      told: filled(sheets.told),
      verdict: filled(sheets.verdict),
      everGiven: filled(sheets.everGiven),
      present: filled(sheets.present),
    }),
  };
}

/** Sums of several sets of forecasts as one: every tenth that holds any, in their order. */
export function addedUp(sets: readonly (readonly TenthSums[])[]): TenthSums[] {
  const sheet = tenths();
  for (const { tenth, count, forecast, observed, squares } of sets.flat()) {
    const own = sheet[tenth] as Sums;
    own.count += count;
    own.forecast += forecast;
    own.observed += observed;
    own.squares += squares;
  }
  return filled(sheet);
}

interface Sums {
  count: number;
  forecast: number;
  observed: number;
  squares: number;
}

function tenths(): Sums[] {
  return Array.from({ length: 10 }, () => ({ count: 0, forecast: 0, observed: 0, squares: 0 }));
}

function add(sheet: Sums[], chance: number, came: number): void {
  const own = sheet[tenthOf(chance)] as Sums;
  own.count += 1;
  own.forecast += chance;
  own.observed += came;
  own.squares += (chance - came) ** 2;
}

function filled(sheet: readonly Sums[]): TenthSums[] {
  return sheet.flatMap((own, tenth) => (own.count > 0 ? [{ tenth, ...own }] : []));
}
