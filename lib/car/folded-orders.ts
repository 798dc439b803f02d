import { CornerwiseError } from "../errors.ts";
import type { VibrationOrder } from "./orders.ts";

/** A vibration too fast for a sensor, and where it shows instead. */
export interface FoldedOrder extends VibrationOrder {
  /** Units: Hz. */
  readonly showsAtHz: number;
}

/** Where a frequency shows when it is read `sampleHz` times a second: its distance from the nearest multiple of that. */
export function foldedHz(hz: number, sampleHz: number): number {
  return Math.abs(hz - sampleHz * Math.round(hz / sampleHz));
}

/**
 * Orders between half the rate of the sensor and the rate that a measured frequency may be instead, slowest first.
 *
 * The tolerance is a share of the true frequency, and as many Hz where it shows. `resolutionHz` is added. What is faster than
 * the rate is left out: a sensor smooths most of it away, and its tolerance would cover half of all that can be measured.
 * Errors: `bad-request` for a frequency or a rate that is not above 0.
 * Source: the sampling theorem (Shannon 1949, from memory).
 */
export function foldedOrders(
  orders: readonly VibrationOrder[],
  measuredHz: number,
  sampleHz: number,
  resolutionHz = 0,
): FoldedOrder[] {
  if (!(measuredHz > 0) || !(sampleHz > 0)) {
    throw new CornerwiseError(
      "bad-request",
      `hz is ${measuredHz}, sampleHz ${sampleHz}; give both above 0.`,
      {
        field: "sampleHz",
      },
    );
  }
  return orders
    .filter(({ hz }) => hz > sampleHz / 2 && hz < sampleHz)
    .map((order) => ({ ...order, showsAtHz: foldedHz(order.hz, sampleHz) }))
    .filter(
      ({ hz, tolerance, showsAtHz }) => Math.abs(measuredHz - showsAtHz) <= hz * tolerance + resolutionHz,
    )
    .sort((a, b) => a.hz - b.hz);
}
