import { CornerwiseError } from "../errors.ts";

/** What decides how fast the shafts of a car turn. */
export interface Running {
  /** Rolling circumference of the driven wheels. */
  readonly circumferenceMm: number;
  readonly speedKmh: number;
  /** Turns of the propshaft (or of the gearbox's output) for one of the wheels. */
  readonly finalDrive?: number | undefined;
  /** Turns of the engine for one of the propshaft, in the gear that is engaged, without slip. */
  readonly gearRatio?: number | undefined;
  /** Engine speed as read; goes before what the gear gives. */
  readonly rpm?: number | undefined;
}

/** Turns a second; what cannot be worked out is left out. */
export interface ShaftRates {
  readonly wheel: number;
  readonly propshaft?: number;
  readonly engine?: number;
}

const METRES_PER_SECOND_PER_KMH = 1 / 3.6;

/**
 * How fast wheels, propshaft and engine turn at a road speed.
 *
 * Units: Hz (turns a second).
 * Errors: `bad-request` for a value that is not a positive number.
 */
export function shaftRates(running: Running): ShaftRates {
  for (const [name, value] of Object.entries(running) as [string, number | undefined][]) {
    if (value !== undefined && !(Number.isFinite(value) && value > 0)) {
      throw new CornerwiseError(
        "bad-request",
        `${name} is ${value}; give a number above 0, or leave it out when it is not known.`,
        { field: name },
      );
    }
  }
  const { circumferenceMm, speedKmh, finalDrive, gearRatio, rpm } = running;
  const wheel = (speedKmh * METRES_PER_SECOND_PER_KMH * 1000) / circumferenceMm;
  const propshaft = finalDrive === undefined ? undefined : wheel * finalDrive;
  const geared = propshaft === undefined || gearRatio === undefined ? undefined : propshaft * gearRatio;
  const engine = rpm === undefined ? geared : rpm / 60;
  return {
    wheel,
    ...(propshaft === undefined ? {} : { propshaft }),
    ...(engine === undefined ? {} : { engine }),
  };
}
