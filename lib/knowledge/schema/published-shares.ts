import { z } from "zod";
import { Basis, Id, Line, Paragraph, Probability } from "./common.ts";
import { Fault, Severity } from "./parts.ts";

const Years = z.number().positive().max(40);
const Words = z.array(Severity.shape.word).min(1);

/** What a published figure counts: see `base`. */
export const ShareBase = z.enum([
  /** Share of inspections with at least one such defect. */
  "tests",
  /** Defects of the kind an inspection; only ever compared as a ratio with another. */
  "defects",
  /** Share of cars that have at least one such fault, whether an inspection would fail it or not. */
  "cars",
  /** A vote or place in a list among the rows of the same fleet and age; only the order counts. */
  "order",
]);
export type ShareBase = z.infer<typeof ShareBase>;

/** `published-shares.json`: published shares of faults on cars at inspection, and how the model's suspects map to them. */
export const PublishedShares = z.strictObject({
  about: Paragraph,
  /** The cars that were inspected. What `car` leaves out is averaged over the shares of car.json. */
  fleets: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        car: z.record(z.string(), z.string()).default({}),
        /** Mean km by age, along straight lines from 0; left out: kmPerYear of car.json. */
        kmAt: z
          .array(z.strictObject({ years: Years, km: z.number().positive() }))
          .min(1)
          .optional(),
        /** Ages of the cars inspected, for figures over all ages. */
        ages: z.array(z.strictObject({ years: Years, weight: z.number().positive() })).min(1),
        basis: Basis,
      }),
    )
    .min(1),
  /** Chance that an inspection fails what the model calls a fault; the first that fits counts, otherwise 1. */
  found: z.array(
    z.strictObject({
      faults: z.array(Id).min(1).optional(),
      kinds: z.array(Fault.shape.kind).min(1).optional(),
      words: Words.optional(),
      chance: Probability,
      why: Line,
      basis: Basis,
    }),
  ),
  /** What a figure's heading covers. A fault belongs to it by its part, or by its item of the directive. */
  groups: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        /** Beginnings of items of Directive 2014/45/EU, such as "5.3". */
        items: z.array(z.string().regex(/^\d+(\.\d+)*$/, "use the digits of an item")).default([]),
        parts: z.array(Id).default([]),
        exceptParts: z.array(Id).default([]),
        kinds: z.array(Fault.shape.kind).min(1).optional(),
        axle: z.enum(["front", "rear"]).optional(),
        /** A large one is held to a closer tolerance. */
        size: z.enum(["large", "small"]),
      }),
    )
    .min(1),
  rows: z
    .array(
      z.strictObject({
        id: Id,
        group: Id,
        words: Words.default(["major", "dangerous"]),
        fleet: Id,
        /** Left out: over all ages of the fleet. */
        age: Years.optional(),
        year: z.number().int().min(1990).max(2100),
        base: ShareBase,
        share: z.number().positive(),
        /** Only the ratio to this other published figure counts; what is left out is as in the row. */
        against: z
          .strictObject({ group: Id.optional(), age: Years.optional(), share: z.number().positive() })
          .optional(),
        note: Line.optional(),
        basis: Basis,
      }),
    )
    .min(1),
  /** What nobody publishes and is taken here all the same. */
  assumptions: z.array(Paragraph).min(1),
});
export type PublishedShares = z.infer<typeof PublishedShares>;
export type ShareRow = PublishedShares["rows"][number];
export type ShareGroup = PublishedShares["groups"][number];
export type ShareFleet = PublishedShares["fleets"][number];
