import { z } from "zod";
import { readCar } from "../car/car.ts";
import { foldedOrders } from "../car/folded-orders.ts";
import { matchOrders, type VibrationOrder, vibrationOrders } from "../car/orders.ts";
import { shaftRates } from "../car/shaft-rates.ts";
import { parseTyreSize, tyreGeometry, writeTyreSize } from "../car/tyre-size.ts";
import { CornerwiseError } from "../errors.ts";
import { findingName } from "../engine/index.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { Shaft } from "../knowledge/schema/orders.ts";
import { KM_PER_MILE } from "../maths/units.ts";
import { given } from "./given.ts";
import { parseRequest } from "./parse-request.ts";

const Positive = z.number().positive();

const Measured = z.strictObject({
  hz: Positive,
  /** How finely the frequency was read. */
  resolutionHz: z.number().min(0).nullish(),
  /** How many times a second the sensor was read: what is faster than half of it is named under `folded`. */
  sampleHz: Positive.nullish(),
  /** Left out: as in the request. */
  speedKmh: Positive.nullish(),
  speedMph: Positive.nullish(),
  gearRatio: Positive.nullish(),
  rpm: Positive.nullish(),
});

/** What `cornerwise orders` reads. One of tyre and circumferenceMm, and one of speedKmh and speedMph, is needed. */
export const OrdersRequest = z.strictObject({
  car: z.record(z.string(), z.json()).nullish(),
  tyre: z.string().max(200).nullish(),
  circumferenceMm: Positive.nullish(),
  speedKmh: Positive.nullish(),
  speedMph: Positive.nullish(),
  finalDrive: Positive.nullish(),
  gearRatio: Positive.nullish(),
  rpm: Positive.nullish(),
  cylinders: z.number().int().min(1).max(16).nullish(),
  measured: z.array(Measured).max(20).nullish(),
  tolerance: z.number().min(0).max(0.2).nullish(),
});
export type OrdersRequest = z.infer<typeof OrdersRequest>;

const OrderRow = z.strictObject({
  shaft: Shaft,
  order: z.number(),
  hz: z.number(),
  finding: z.string().optional(),
  name: z.string().optional(),
});

/** What `cornerwise orders` answers. */
export const OrdersAnswer = z.strictObject({
  release: z.string(),
  tyre: z.strictObject({ size: z.string(), designDiameterMm: z.number() }).optional(),
  circumferenceMm: z.number(),
  turnsPerKm: z.number(),
  speedKmh: z.number(),
  /** Turns a second. */
  rates: z.strictObject({
    wheel: z.number(),
    propshaft: z.number().optional(),
    engine: z.number().optional(),
  }),
  orders: z.array(OrderRow),
  measured: z.array(
    z.strictObject({
      hz: z.number(),
      speedKmh: z.number(),
      matches: z.array(OrderRow.extend({ offPercent: z.number() })),
      /** Orders too fast for the sensor, which would show at this frequency. */
      folded: z.array(OrderRow.extend({ showsAtHz: z.number() })).optional(),
    }),
  ),
  /** Orders that fit every measured frequency. */
  fits: z.array(z.strictObject({ shaft: Shaft, order: z.number(), finding: z.string().optional() })),
  /** Ready for the findings of a weigh request; empty unless all that fits is one finding. */
  findings: z.array(z.strictObject({ id: z.string(), state: z.literal("present") })),
  /** How to tell the shafts apart, when more than one fits. */
  apart: z.array(z.strictObject({ shaft: Shaft, how: z.string() })),
});
export type OrdersAnswer = z.infer<typeof OrdersAnswer>;

/**
 * Answers one orders request: what turns at which rate, and what a measured frequency may be.
 *
 * Errors: `bad-request` naming the field and how to mend it.
 */
export function answerOrdersRequest(knowledge: Knowledge, input: unknown): OrdersAnswer {
  const request = parseRequest(OrdersRequest, "orders-request", input);
  const { car } = readCar(knowledge, request.car ?? {});
  const { tyre, circumferenceMm } = rolling(request);
  const ordersAt = (speedKmh: number, gearRatio?: number | null, rpm?: number | null) => {
    const rates = shaftRates({
      circumferenceMm,
      speedKmh,
      finalDrive: request.finalDrive ?? undefined,
      gearRatio: gearRatio ?? undefined,
      rpm: rpm ?? undefined,
    });
    return { rates, orders: vibrationOrders(knowledge, rates, car, request.cylinders ?? undefined) };
  };
  const speedKmh = speedOf(request, "the request");
  if (speedKmh === undefined) throw wrong("speedKmh", "is missing", "give speedKmh or speedMph");
  const { rates, orders } = ordersAt(speedKmh, request.gearRatio, request.rpm);
  const measured = (request.measured ?? []).map((m, i) => {
    const own = speedOf(m, `measured.${i}`);
    // An engine speed read at another speed says nothing of this one.
    const rpm = m.rpm ?? (own === undefined && !given(m.gearRatio) ? request.rpm : undefined);
    const at = ordersAt(own ?? speedKmh, m.gearRatio ?? request.gearRatio, rpm);
    const matches = matchOrders(at.orders, m.hz, {
      tolerance: request.tolerance ?? undefined,
      resolutionHz: m.resolutionHz ?? undefined,
    });
    const { sampleHz } = m;
    const folded = given(sampleHz)
      ? foldedOrders(at.orders, m.hz, sampleHz, m.resolutionHz ?? undefined)
      : undefined;
    return { hz: m.hz, speedKmh: own ?? speedKmh, matches, folded };
  });
  const [first, ...others] = measured;
  const fits = (first?.matches ?? []).filter((match) =>
    others.every(({ matches }) => matches.some((o) => o.shaft === match.shaft && o.order === match.order)),
  );
  const shafts = new Set(fits.map(({ shaft }) => shaft));
  const [only, another] = new Set(fits.map(({ observation }) => observation));
  return {
    release: knowledge.version,
    ...(tyre === undefined ? {} : { tyre }),
    circumferenceMm,
    turnsPerKm: 1e6 / circumferenceMm,
    speedKmh,
    rates,
    orders: orders.map((order) => row(knowledge, order)),
    measured: measured.map(({ matches, folded, ...at }) => ({
      ...at,
      matches: matches.map((match) => ({ ...row(knowledge, match), offPercent: 100 * match.off })),
      ...(folded !== undefined && {
        folded: folded.map((order) => ({ ...row(knowledge, order), showsAtHz: order.showsAtHz })),
      }),
    })),
    fits: fits.map(({ shaft, order, observation }) => ({
      shaft,
      order,
      ...(observation === undefined ? {} : { finding: observation }),
    })),
    findings:
      fits.length > 0 && another === undefined && only !== undefined
        ? [{ id: only, state: "present" as const }]
        : [],
    apart: knowledge.orders.shafts
      .filter(({ shaft }) => shafts.size > 1 && shafts.has(shaft))
      .map(({ shaft, apart }) => ({ shaft, how: apart })),
  };
}

function row(knowledge: Knowledge, { shaft, order, hz, observation }: VibrationOrder) {
  return observation === undefined
    ? { shaft, order, hz }
    : { shaft, order, hz, finding: observation, name: findingName(knowledge, observation) };
}

function rolling(request: OrdersRequest): {
  tyre?: { size: string; designDiameterMm: number };
  circumferenceMm: number;
} {
  if (given(request.tyre) && given(request.circumferenceMm))
    throw wrong("circumferenceMm", "stands beside tyre", "give one of them");
  if (given(request.circumferenceMm)) return { circumferenceMm: request.circumferenceMm };
  if (!given(request.tyre))
    throw wrong("tyre", "is missing", 'give the size, such as "205/55R16", or circumferenceMm');
  const size = parseTyreSize(request.tyre);
  const { designDiameterMm, rollingCircumferenceMm } = tyreGeometry(size);
  return {
    tyre: { size: writeTyreSize(size), designDiameterMm },
    circumferenceMm: rollingCircumferenceMm,
  };
}

function speedOf(
  { speedKmh, speedMph }: Pick<OrdersRequest, "speedKmh" | "speedMph">,
  where: string,
): number | undefined {
  if (given(speedKmh) && given(speedMph))
    throw wrong(`${where}: speedMph`, "stands beside speedKmh", "give one of them");
  if (given(speedMph)) return speedMph * KM_PER_MILE;
  return speedKmh ?? undefined;
}

function wrong(field: string, what: string, mend: string): CornerwiseError {
  return new CornerwiseError("bad-request", `${field} ${what}; ${mend}.`, { field });
}
