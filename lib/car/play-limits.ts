import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { LimitFigure, Limits } from "../knowledge/schema/limits.ts";
import { alongLine } from "../maths/along-line.ts";
import { MM_PER_INCH } from "../maths/units.ts";
import type { Car } from "./car.ts";
import { knownToLack } from "./known-to-lack.ts";

type Limit = Limits["limits"][number];

/** A movement, depth or thickness that was measured, and what the limits go by. */
export interface MeasuredPlay {
  /** Id of one of the quantities of `limits.json`. */
  readonly quantity: string;
  readonly mm: number;
  /** Diameter of the circle that it was measured on. */
  readonly circleMm?: number | undefined;
  /** Nominal diameter of the wheel's rim. */
  readonly rimMm?: number | undefined;
}

/** What was measured beside one rule. */
export interface LimitStanding {
  readonly limit: Limit;
  /** Left out when the rule goes by a diameter that was not given. */
  readonly mostMm?: number;
  /** For a rule that says what must be left. */
  readonly leastMm?: number;
  /** Below, at or above the figure; "at" is what the rules allow, "over" a most and "under" a least are not; "unknown": `needs` says which diameter is missing. */
  readonly standing: "under" | "at" | "over" | "unknown";
  readonly needs?: "circle" | "rim";
}

/** Two lengths closer than this are the same: far finer than any gauge, far coarser than rounding of numbers. */
const SAME_MM = 1e-6;

/**
 * What was measured beside every published limit of its quantity that may hold for the car, in the order of the knowledge.
 *
 * `country` keeps the rules of that country and of its states ("US" keeps "US-MO"), "US-MO" that state's and the whole country's.
 * Within a limit says nothing about what is worn: the maker's figure decides.
 */
export function playLimits(
  knowledge: Knowledge,
  play: MeasuredPlay,
  car: Car,
  country?: string,
): LimitStanding[] {
  return knowledge.limits.limits
    .filter((limit) => limit.quantity === play.quantity && !knownToLack(car, limit.when))
    .filter((limit) => country === undefined || sameCountry(limit.country, country))
    .map((limit) => {
      const figure = limitMm(limit, limit.by === "rim" ? play.rimMm : play.circleMm);
      if (figure === undefined) return { limit, standing: "unknown" as const, needs: limit.by };
      const over = play.mm - figure;
      return {
        limit,
        ...(limit.figure.kind === "least" ? { leastMm: figure } : { mostMm: figure }),
        standing: Math.abs(over) <= SAME_MM ? "at" : over > 0 ? "over" : "under",
      };
    });
}

/**
 * The figure of a limit at a diameter, or nothing when it goes by one and none is given.
 *
 * Units: mm, whatever the unit of the rule.
 */
export function limitMm(limit: Limit, diameterMm: number | undefined): number | undefined {
  const scale = limit.unit === "in" ? MM_PER_INCH : 1;
  const figure = figureAt(limit.figure, diameterMm === undefined ? undefined : diameterMm / scale);
  return figure === undefined ? undefined : figure * scale;
}

function figureAt(figure: LimitFigure, diameter: number | undefined): number | undefined {
  if (figure.kind === "flat") return figure.most;
  if (figure.kind === "least") return figure.least;
  if (diameter === undefined) return undefined;
  switch (figure.kind) {
    case "scaled":
      return (figure.most * diameter) / figure.on;
    case "steps":
      // A diameter given in mm must not miss the step that it is by the last digit of its conversion.
      return figure.steps.find(({ upTo }) => diameter <= upTo + SAME_MM / MM_PER_INCH)?.most ?? figure.above;
    case "line":
      return alongLine(
        figure.points.map(({ at, most }) => ({ at, value: most })),
        diameter,
      );
  }
}

function sameCountry(a: string, b: string): boolean {
  return a === b || a.startsWith(`${b}-`) || b.startsWith(`${a}-`);
}
