import type { Car } from "../car/car.ts";
import { type Usage, usage } from "../car/usage.ts";
import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { indexPlaces, type PlaceIndex } from "./place-index.ts";

/** A part that was renewed, or is known to be the first (`atKm` 0). One of `atKm` and `yearsAgo` is needed. */
export interface FittedPart {
  readonly part: string;
  /** Left out: at every place of the part. A wider place takes those within it. */
  readonly place?: string | undefined;
  /** Odometer when it was fitted. */
  readonly atKm?: number | undefined;
  readonly yearsAgo?: number | undefined;
}

/** How far and how long a part has run. */
export interface PartAge extends Usage {
  /** True when it was told; else the part is taken to be as old as the car, or one of its followers. */
  readonly ownAge: boolean;
}

/**
 * The age of a part at a place of this car; of several that were told, the youngest counts.
 *
 * Errors: `unknown-id` for a part or place that the knowledge does not hold or the part does not have, `bad-request` for
 * an age that is missing, below 0 or beyond that of the car.
 */
export function partAges(
  knowledge: Knowledge,
  car: Car,
  used: Usage,
  kmPerYear: number,
  places: PlaceIndex,
  fitted: readonly FittedPart[],
): (part: string, place: string) => PartAge {
  const told = fitted.map((f, i) => ({ ...f, age: ageOf(f, `fitted.${i}`) }));
  return (part, place) => {
    const ages = told
      .filter((f) => f.part === part && (f.place === undefined || places.overlap(f.place, place)))
      .map(({ age }) => age)
      .sort((a, b) => a.km - b.km);
    return ages[0] ?? { ...used, ownAge: false };
  };

  function ageOf({ part, place, atKm, yearsAgo }: FittedPart, where: string): PartAge {
    const record = knowledge.parts.find((p) => p.id === part);
    if (record === undefined)
      throw unknown(`${where}.part`, `there is no part "${part}"`, 'list them with "cornerwise parts"');
    if (place !== undefined && !record.places.some((p) => places.overlap(p, place)))
      throw unknown(`${where}.place`, `"${part}" has no place "${place}"`, `use ${record.places.join(", ")}`);
    if (atKm === undefined && yearsAgo === undefined)
      throw wrong(where, "has no age", "give atKm (odometer when fitted) or yearsAgo");
    if (!fits(atKm, used.km, car.has("odometerKm")))
      throw wrong(`${where}.atKm`, `is ${atKm}`, `give an odometer reading from 0 to ${used.km} km`);
    if (!fits(yearsAgo, used.years, car.has("ageYears")))
      throw wrong(`${where}.yearsAgo`, `is ${yearsAgo}`, `give years from 0 to the car's ${used.years}`);
    const km = atKm === undefined ? (yearsAgo ?? 0) * kmPerYear : used.km - atKm;
    const years = yearsAgo ?? km / kmPerYear;
    return {
      km: Math.min(Math.max(km, 0), used.km),
      years: Math.min(Math.max(years, 0), used.years),
      ownAge: true,
    };
  }
}

/** Those of some fitted parts that the car can have: of a part that it knows, at a place of it, no older than the car. */
export function fittedThatHold<F extends FittedPart>(
  knowledge: Knowledge,
  car: Car,
  fitted: readonly F[],
): F[] {
  if (fitted.length === 0) return [];
  const used = usage(knowledge, car);
  const places = indexPlaces(knowledge);
  return fitted.filter((one) => {
    try {
      partAges(knowledge, car, used, knowledge.car.kmPerYear.value, places, [one]);
      return true;
    } catch {
      return false;
    }
  });
}

/** Within the car's own age, when that is known. */
function fits(value: number | undefined, most: number, known: boolean): boolean {
  return value === undefined || (value >= 0 && Number.isFinite(value) && (!known || value <= most));
}

function unknown(field: string, what: string, mend: string): CornerwiseError {
  return new CornerwiseError("unknown-id", `${field}: ${what}; ${mend}.`, { field });
}

function wrong(field: string, what: string, mend: string): CornerwiseError {
  return new CornerwiseError("bad-request", `${field} ${what}; ${mend}.`, { field });
}
