import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Shaft } from "../knowledge/schema/orders.ts";
import type { Car } from "./car.ts";
import { knownToLack } from "./known-to-lack.ts";
import type { ShaftRates } from "./shaft-rates.ts";

/** A vibration that something turning can give. */
export interface VibrationOrder {
  readonly shaft: Shaft;
  /** Vibrations a turn. */
  readonly order: number;
  readonly hz: number;
  /** Observation that a vibration at this order is, where the knowledge holds one. */
  readonly observation?: string;
  /** Share of `hz` by which a measured frequency may be off. */
  readonly tolerance: number;
}

/** An order that a measured frequency may be. */
export interface OrderMatch extends VibrationOrder {
  /** (measured - worked) / worked. */
  readonly off: number;
}

/**
 * Every order that the knowledge lists for what turns on this car, slowest first.
 *
 * The firing order of a four-stroke engine, cylinders / 2, is listed whatever the knowledge lists; half orders and the
 * firing order get their findings only when the number of cylinders is known.
 * Errors: `bad-request` for a number of cylinders that is not whole or not from 1 to 16.
 */
export function vibrationOrders(
  knowledge: Knowledge,
  rates: ShaftRates,
  car: Car,
  cylinders?: number,
): VibrationOrder[] {
  if (cylinders !== undefined && !(Number.isInteger(cylinders) && cylinders >= 1 && cylinders <= 16)) {
    throw new CornerwiseError(
      "bad-request",
      `cylinders is ${cylinders}; give a whole number from 1 to 16, or leave it out.`,
      { field: "cylinders" },
    );
  }
  const firing = cylinders === undefined ? undefined : cylinders / 2;
  return knowledge.orders.shafts
    .flatMap(({ shaft, orders, when, tolerance }) => {
      const rate = rates[shaft];
      if (rate === undefined || knownToLack(car, when)) return [];
      const listed = shaft === "engine" && firing !== undefined ? [...orders, firing] : orders;
      return [...new Set(listed)].map((order): VibrationOrder => {
        const observation = findingOf(knowledge, shaft, order, firing);
        const at = { shaft, order, hz: rate * order, tolerance };
        return observation === undefined ? at : { ...at, observation };
      });
    })
    .sort((a, b) => a.hz - b.hz);
}

/**
 * The orders that a measured frequency may be, nearest first.
 *
 * `tolerance` (a share) takes the place of each order's own; `resolutionHz` is how finely the frequency was read and is added.
 * Errors: `bad-request` for a frequency that is not a positive number, or a tolerance or resolution below 0.
 */
export function matchOrders(
  orders: readonly VibrationOrder[],
  measuredHz: number,
  options: { readonly tolerance?: number | undefined; readonly resolutionHz?: number | undefined } = {},
): OrderMatch[] {
  const { tolerance, resolutionHz = 0 } = options;
  if (!(Number.isFinite(measuredHz) && measuredHz > 0) || !(resolutionHz >= 0) || (tolerance ?? 0) < 0) {
    throw new CornerwiseError(
      "bad-request",
      `hz is ${measuredHz}, tolerance ${tolerance}, resolutionHz ${resolutionHz}; give a frequency above 0 and the others not below 0.`,
      { field: "hz" },
    );
  }
  return orders
    .filter(({ hz, tolerance: own }) => Math.abs(measuredHz - hz) <= hz * (tolerance ?? own) + resolutionHz)
    .map((order) => ({ ...order, off: measuredHz / order.hz - 1 }))
    .sort((a, b) => Math.abs(a.off) - Math.abs(b.off));
}

function findingOf(
  knowledge: Knowledge,
  shaft: Shaft,
  order: number,
  firing: number | undefined,
): string | undefined {
  const half = firing !== undefined && order !== firing && order % 1 === 0.5;
  return knowledge.orders.findings.find((finding) => {
    if (finding.shaft !== shaft) return false;
    if (finding.order === "firing") return order === firing;
    if (finding.order === "half") return half;
    return finding.order === order;
  })?.observation;
}
