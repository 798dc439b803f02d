import { z } from "zod";
import { Basis, Id, Line, Logic, OtherNames, Paragraph, Phrases, Probability, Strength } from "./common.ts";
import { LayWords } from "./lay.ts";

/** `manifest.json`: which form and which version the folder holds. */
export const Manifest = z.strictObject({
  schemaVersion: z.literal(1),
  version: z.string().regex(/^\d+\.\d+\.\d+$/, "use three numbers, such as 0.1.0"),
  about: Paragraph,
});

/** `scale.json`: the frequency words and what they mean. */
export const Scale = z.strictObject({
  basis: Basis,
  about: Paragraph,
  words: z.record(Id, z.strictObject({ p: Probability, spread: z.number().positive().max(3) })),
});

export const Side = z.enum(["left", "right", "none"]);
export const Axle = z.enum(["front", "rear", "none"]);

/** `places.json`: the places of a car and named sets of them. `within` lists the wider places that a place is part of. */
export const Places = z.strictObject({
  places: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        short: Line,
        side: Side,
        axle: Axle,
        within: z.array(Id).default([]),
      }),
    )
    .min(1),
  sets: z.record(Id, z.array(Id).min(1)),
});

const ChoiceAttribute = z.strictObject({
  id: Id,
  path: z.string().regex(/^[a-zA-Z]+(\.[a-zA-Z]+)?$/, "use the car's field, such as front.layout"),
  name: Line,
  kind: z.literal("choice"),
  ask: Line.optional(),
  /** What each value is called and its share of the cars on the road, used when the value is not known. */
  values: z.array(z.strictObject({ id: Id, name: Line, share: Probability, otherNames: OtherNames })).min(2),
  basis: Basis,
});

const NumberAttribute = z.strictObject({
  id: Id,
  path: z.string().regex(/^[a-zA-Z]+(\.[a-zA-Z]+)?$/),
  name: Line,
  kind: z.literal("number"),
  ask: Line.optional(),
  unit: Line,
  min: z.number(),
  max: z.number(),
  typical: z.number(),
  basis: Basis,
});

/** `car.json`: what is asked of a car, and what is assumed when it is not known. */
export const CarAttributes = z.strictObject({
  attributes: z.array(z.discriminatedUnion("kind", [ChoiceAttribute, NumberAttribute])).min(1),
  kmPerYear: z.strictObject({ value: z.number().positive(), basis: Basis }),
  /**
   * Parts that are faulty from new or fail early: the rate of failures of a wear part is never below this share of its
   * long-run rate.
   */
  early: z.strictObject({ share: z.number().min(0).max(1), why: Line, basis: Basis }).optional(),
  /** Km (and years) for which a failed part commonly stays on the car before somebody mends it. */
  stands: z.strictObject({
    km: z.number().positive(),
    years: z.number().positive(),
    basis: Basis,
    /**
     * Factor on it by age of the car, along straight lines; level before the first and after the last. Plain shares of
     * faults go with it.
     */
    byAge: z
      .strictObject({
        points: z.array(z.strictObject({ years: z.number().min(0), factor: z.number().positive() })).min(1),
        why: Line,
        basis: Basis,
      })
      .optional(),
  }),
});

/** `set-ups.json`: states that the car must be in, and minutes to change from one to the other. */
export const SetUps = z.strictObject({
  setUps: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        about: Line,
        needs: z.enum(["nothing", "road", "stands", "lift"]),
      }),
    )
    .min(1),
  /** minutes[from][to] */
  minutes: z.record(Id, z.record(Id, z.number().min(0).max(120))),
  start: Id,
  basis: Basis,
});

/** `reports.json`: how much a told finding weighs against one that was checked by hand. */
export const Reports = z.strictObject({
  /** Factor on every link's strength. */
  reliability: Probability,
  /** Chance that it is told although it is not there. */
  falseAlarm: Probability,
  /** Share of told features of a complaint (its moments, sounds, places) that are as told; the rest says nothing. */
  features: Probability,
  /** The same for where it seems to come from; as `features` when left out. */
  where: Probability.exactOptional(),
  /** Minutes that one question takes. */
  questionMinutes: z.number().positive(),
  basis: Basis,
});

/** `groups.json`: features that go together; their combined weight is tempered by count to the power of minus `temper`. */
export const Groups = z.strictObject({
  groups: z.array(z.strictObject({ id: Id, name: Line, temper: z.number().min(0).max(1) })).min(1),
  /** Chance of a feature, given a fault that does not list it, as a share of the feature's background. */
  unlisted: Probability,
  basis: Basis,
});

/** A published source, by its official name. */
export const Source = z.strictObject({
  id: Id,
  title: Line,
  kind: z.enum([
    "regulation",
    "standard",
    "inspection-manual",
    "paper",
    "statistics",
    "service-literature",
    "trade",
    "none",
  ]),
  where: Line,
  /** "seen" when the text was read, "memory" when it was not, "none" for common practice. */
  status: z.enum(["seen", "memory", "none"]),
  note: Line.optional(),
});

/** A caution, worded once, named wherever the step is. `covers` says which dangers it answers. */
export const Caution = z.strictObject({
  id: Id,
  text: Paragraph,
  covers: z
    .array(
      z.enum(["lifts", "loads", "spins", "drives", "springs", "heat", "airbag", "moves", "dust", "general"]),
    )
    .min(1),
});

/** Something that happened to the car lately; it moves priors by the factors that faults name. */
export const Context = z.strictObject({
  id: Id,
  name: Line,
  question: Line,
  lay: LayWords.optional(),
  otherNames: OtherNames,
  phrases: Phrases,
  /** Share of cars that come in with it. */
  share: Probability,
});

/** What a fault's showing commonly looks like: a set of feature strengths that faults refer to by name. */
export const Profile = z.strictObject({
  id: Id,
  name: Line,
  about: Line,
  features: z.record(Id, Strength),
});

export { Logic };
