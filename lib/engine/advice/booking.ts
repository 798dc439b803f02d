import type { Course } from "./course.ts";

/** How long to book, from visits played ahead. Units: minutes. */
export interface Booking {
  /** Visits played. */
  readonly visits: number;
  readonly checking: Spread;
  /** Checking and repairing together. */
  readonly whole: Spread;
  /** Share of the visits, 0..1, that need the car raised, a second person, a drive. */
  readonly raised: number;
  readonly helper: number;
  readonly roadTest: number;
  /** Share of the visits that end without a cure. */
  readonly handedOver: number;
}

export interface Spread {
  /** Half of the visits take no longer. */
  readonly p50: number;
  /** Nine of ten visits take no longer. */
  readonly p90: number;
}

/** What the visits played so far say of the next one; undefined without any. */
export function booking(courses: readonly Course[]): Booking | undefined {
  if (courses.length === 0) return undefined;
  const share = (of: (c: Course) => boolean): number => courses.filter(of).length / courses.length;
  return {
    visits: courses.length,
    checking: spread(courses.map((c) => c.checking)),
    whole: spread(courses.map((c) => c.checking + c.repairing)),
    raised: share((c) => c.raised),
    helper: share((c) => c.helper),
    roadTest: share((c) => c.roadTest),
    handedOver: share((c) => c.handedOver),
  };
}

function spread(minutes: readonly number[]): Spread {
  const sorted = minutes.toSorted((a, b) => a - b);
  // The smallest value that the share does not exceed: defined for few visits too.
  const at = (share: number): number => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
  return { p50: at(0.5), p90: at(0.9) };
}
