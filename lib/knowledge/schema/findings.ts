import { z } from "zod";
import {
  Basis,
  Ended,
  Id,
  Line,
  Logic,
  OtherNames,
  Paragraph,
  Phrases,
  PlaceSetId,
  Probability,
} from "./common.ts";
import { LayTry, LayWords } from "./lay.ts";

/** What is complained of: one bit for the reasoning, however many features are told of it. */
export const Complaint = z.strictObject({
  id: Id,
  name: Line,
  aspect: z.enum(["sound", "feel", "handling", "look"]),
  otherNames: OtherNames,
  phrases: Phrases,
  question: Line,
  lay: LayWords.optional(),
  /** Chance that a car shows it through causes which this knowledge does not hold. */
  leak: Probability,
  basis: Basis.default("common-practice"),
  ended: Ended.optional(),
});

/**
 * One feature of a complaint: a moment, a kind of sound, where it is felt or seems to come from, a speed band.
 *
 * `relative` makes it sided: for a suspect on that side or axle the strength is looked up under the key given
 * (the fault's own features first, then `defaults`).
 */
export const Feature = z.strictObject({
  id: Id,
  name: Line,
  kind: z.enum(["moment", "sound", "felt", "where", "speed", "pattern", "direction", "course"]),
  group: Id,
  complaints: z.array(Id).min(1),
  /** Chance of it when the cause lies outside the knowledge. */
  background: Probability,
  /** Chance of it for a fault that does not list it; a share of the background (groups.json) when left out. */
  unlisted: Probability.optional(),
  relative: z
    .strictObject({
      left: Id.optional(),
      right: Id.optional(),
      front: Id.optional(),
      rear: Id.optional(),
      none: Id.optional(),
    })
    .optional(),
  /** Strengths of relative keys that a fault need not name. */
  defaults: z.record(Id, Probability).optional(),
  /** Speed band in km/h that free text is matched to. */
  speed: z.strictObject({ from: z.number().min(0), to: z.number().max(300) }).optional(),
  question: Line,
  lay: LayWords.optional(),
  /** Who can answer it. */
  who: z.enum(["owner", "driver", "technician"]).default("owner"),
  otherNames: OtherNames,
  phrases: Phrases,
  /** The feature that this one rules out when present (left and right, front and rear). */
  opposite: Id.optional(),
  /** The feature that takes its place when the car is mirrored. */
  mirror: Id.optional(),
  ended: Ended.optional(),
});

/** What a check settles: seen, felt by hand or measured at a place. */
export const Observation = z.strictObject({
  id: Id,
  name: Line,
  otherNames: OtherNames,
  phrases: Phrases,
  at: PlaceSetId,
  when: Logic.optional(),
  /** Grades above "none", weakest first; each holds all before it. Left out: a plain yes or no. */
  levels: z.array(Id).min(2).max(4).optional(),
  /** A number with a unit that is mapped to the grades: level i from `atLeast[i]` on. */
  measure: z
    .strictObject({
      quantity: Line,
      unit: Line,
      atLeast: z.array(z.number()).min(1).max(4),
      basis: Basis,
      limits: z.array(Line).optional(),
    })
    .optional(),
  /** Chance to find it with no fault of this knowledge behind it; one a level, or one for all. */
  leak: z.union([Probability, z.array(Probability).min(1).max(4)]),
  /** What it is called among the answers to a try; needed where a check's `lay` settles it. */
  lay: z.strictObject({ choice: Line }).optional(),
  /** What is normal and must not be taken for this. */
  normal: Paragraph.optional(),
  basis: Basis.default("common-practice"),
  ended: Ended.optional(),
});

/** A procedure that settles findings. */
export const Check = z.strictObject({
  id: Id,
  name: Line,
  otherNames: OtherNames,
  at: PlaceSetId,
  when: Logic.optional(),
  setUp: Id,
  minutes: z.number().min(0.5).max(120),
  who: z.enum(["owner", "driver", "technician"]),
  helper: z.boolean().default(false),
  tools: z.array(Line).default([]),
  does: z.array(z.enum(["lifts", "loads", "spins", "drives", "springs", "heat", "moves"])).default([]),
  settles: z.array(Id).min(1).max(6),
  steps: z.array(Paragraph).min(1).max(12),
  cautions: z.array(Id).default([]),
  normal: Paragraph,
  /** Observation that, when present at an overlapping place, forbids this check: do not drive a car with a loose wheel. */
  notWhen: z.array(Id).default([]),
  /** Set where anybody may try it on the standing car without tools. */
  lay: LayTry.optional(),
  basis: Basis.default("common-practice"),
  ended: Ended.optional(),
});
