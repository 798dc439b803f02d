import { z } from "zod";
import {
  Basis,
  Ended,
  Id,
  Line,
  Logic,
  OtherNames,
  Paragraph,
  PlaceSetId,
  Probability,
  Strength,
} from "./common.ts";

/** A kind of component and where a car can have it. */
export const Part = z.strictObject({
  id: Id,
  name: Line,
  otherNames: OtherNames,
  /** Names that it shares with other parts: "ball joint" for an upper and a lower one. */
  generalNames: OtherNames,
  about: Paragraph,
  /** Group that inspection figures are published for, and that the screen sorts by. */
  group: Id,
  at: z.union([PlaceSetId, z.array(PlaceSetId).min(1)]),
  /** JsonLogic over the car and the place: {"var":"front.layout"}, {"var":"drive"}, {"var":"place.axle"}. */
  when: Logic.optional(),
  ended: Ended.optional(),
});

/** Weibull wear life, or a plain share of cars that have the fault now. */
export const Life = z.union([
  z.strictObject({
    km: z.number().positive(),
    shape: z.number().min(0.5).max(8),
    basis: Basis.default("common-practice"),
    /** Km that the fault stays unmended; car.json's value when left out. */
    stands: z.number().positive().optional(),
  }),
  z.strictObject({
    years: z.number().positive(),
    shape: z.number().min(0.5).max(8),
    basis: Basis.default("common-practice"),
    stands: z.number().positive().optional(),
  }),
  z.strictObject({ share: Probability, basis: Basis.default("common-practice") }),
]);
export type Life = z.infer<typeof Life>;

/** One way in which a fault shows as a complaint. Feature strengths are given that it shows. */
export const Showing = z.strictObject({
  complaint: Id,
  strength: Strength,
  profile: Id.optional(),
  /** Features of this showing, over those of the profile. */
  features: z.record(Id, Strength).default({}),
  basis: Basis.optional(),
});

const Linked = z.union([
  Strength,
  z.strictObject({ levels: z.array(Strength).min(2).max(4), basis: Basis.optional() }),
]);

export const Severity = z.strictObject({
  word: z.enum(["minor", "major", "dangerous"]),
  /** Item of Directive 2014/45/EU Annex I, such as "5.3.4 a"; left out when it has none. */
  item: z.string().max(20).optional(),
  reason: Line,
  basis: Basis,
});

export const Remedy = z.strictObject({
  work: Paragraph,
  minutes: z.number().min(1).max(1000),
  /** Part ids that are renewed together, and on which side. */
  paired: z
    .array(z.strictObject({ part: Id, where: z.enum(["same-place", "other-side", "both-sides"]), why: Line }))
    .default([]),
  oneUse: z.array(Line).default([]),
  tightenAtRideHeight: z.boolean().default(false),
  alignment: z.boolean().default(false),
  lookAtToo: z.array(Line).default([]),
  cautions: z.array(Id).default([]),
});

/** One way in which a part fails. */
export const Fault = z.strictObject({
  id: Id,
  part: Id,
  name: Line,
  otherNames: OtherNames,
  kind: z.enum([
    "worn",
    "torn",
    "leaking",
    "seized",
    "loose",
    "bent",
    "broken",
    "unbalanced",
    "misfitted",
    "misadjusted",
    "dirty",
    "fluid",
  ]),
  when: Logic.optional(),
  life: Life,
  /** Rules over the car and place; every one that holds multiplies the characteristic life or the share. */
  modifiers: z
    .array(
      z.strictObject({
        when: Logic,
        life: z.number().positive().optional(),
        odds: z.number().positive().optional(),
        why: Line,
      }),
    )
    .default([]),
  /** Context id -> factor on the odds that the fault is there now. */
  contexts: z.record(Id, z.number().positive()).default({}),
  shows: z.array(Showing).default([]),
  /** Observation id -> how often this fault gives it at its place. A graded one names a strength for each level. */
  links: z.record(Id, Linked).default({}),
  /** Findings that prove it: an observation id, with ":level" when graded. */
  decisive: z.array(z.string().regex(/^[a-z0-9-]+(:[a-z0-9-]+)?$/)).default([]),
  severity: Severity,
  /** Chance from which the stop notice shows, and what it says. Needed for every dangerous fault. */
  stop: z.strictObject({ from: Probability, say: Line }).optional(),
  remedy: Remedy,
  /** Fault ids that no check can tell from this one, with the reason. */
  inseparable: z.array(z.strictObject({ fault: Id, why: Line })).default([]),
  basis: Basis.default("common-practice"),
  ended: Ended.optional(),
});
