import { z } from "zod";
import { Advice } from "./advice.ts";
import { Id, Line, Logic, Probability } from "./common.ts";
import { Costs } from "./costs.ts";
import { DemoCase } from "./demo-cases.ts";
import { Doubt } from "./doubt.ts";
import { Check, Complaint, Feature, Observation } from "./findings.ts";
import { Lay } from "./lay.ts";
import { LayoutDrawing } from "./layouts.ts";
import { Limits } from "./limits.ts";
import { Orders } from "./orders.ts";
import { Fault, Part } from "./parts.ts";
import { PublishedShares } from "./published-shares.ts";
import {
  CarAttributes,
  Caution,
  Context,
  Groups,
  Places,
  Reports,
  Scale,
  SetUps,
  Source,
} from "./vocabulary.ts";
import { Words } from "./words.ts";

/** A strength with every default filled in: probability, spread in log-odds, where it comes from. */
export const Weight = z.strictObject({ p: Probability, spread: z.number().positive(), basis: Id });
export type Weight = z.infer<typeof Weight>;

/** A showing with its profile folded in and every listed feature as a number. */
export const CompiledShowing = z.strictObject({
  complaint: Id,
  strength: Weight,
  features: z.record(Id, Probability),
});

/** A link to an observation: one weight a level, falling from level to level. */
export const CompiledLink = z.strictObject({ observation: Id, levels: z.array(Weight).min(1).max(4) });

export type CompiledShowing = z.infer<typeof CompiledShowing>;

export const CompiledFault = Fault.omit({ shows: true, links: true, decisive: true }).extend({
  shows: z.array(CompiledShowing),
  links: z.array(CompiledLink),
  /** level is the index of the grade that proves; 0 for a plain yes or no. */
  decisive: z.array(z.strictObject({ observation: Id, level: z.number().int().min(0).max(3) })),
});
export type CompiledFault = z.infer<typeof CompiledFault>;

export const CompiledObservation = Observation.omit({ levels: true, leak: true }).extend({
  /** Names of the grades above "none"; ["present"] for a plain yes or no. */
  levels: z.array(Id).min(1).max(4),
  leak: z.array(Probability).min(1).max(4),
  places: z.array(Id).min(1),
});
export type CompiledObservation = z.infer<typeof CompiledObservation>;

export const CompiledFeature = Feature.omit({ unlisted: true }).extend({ unlisted: Probability });
export type CompiledFeature = z.infer<typeof CompiledFeature>;

export const CompiledCheck = Check.extend({ places: z.array(Id).min(1) });
export type CompiledCheck = z.infer<typeof CompiledCheck>;

export const CompiledPart = Part.omit({ at: true }).extend({ places: z.array(Id).min(1) });
export type CompiledPart = z.infer<typeof CompiledPart>;

/** The whole knowledge, complete: what a release holds and what the engine reads. */
export const Knowledge = z.strictObject({
  schemaVersion: z.literal(1),
  version: z.string(),
  scale: Scale,
  places: Places,
  car: CarAttributes,
  setUps: SetUps,
  reports: Reports,
  groups: Groups,
  words: Words,
  costs: Costs,
  orders: Orders,
  limits: Limits,
  /** Releases before 1.0.0 have none. */
  publishedShares: PublishedShares.optional(),
  /** Releases before 1.0.0 have none: then only strengths move. */
  doubt: Doubt.optional(),
  /** Releases before 1.2.0 have none. */
  advice: Advice.optional(),
  /** Releases before 1.3.0 have none: then questions are worded as they are for the workshop. */
  lay: Lay.optional(),
  parts: z.array(CompiledPart),
  faults: z.array(CompiledFault),
  complaints: z.array(Complaint),
  features: z.array(CompiledFeature),
  observations: z.array(CompiledObservation),
  contexts: z.array(Context),
  checks: z.array(CompiledCheck),
  cautions: z.array(Caution),
  sources: z.array(Source),
  layouts: z.array(LayoutDrawing),
  demoCases: z.array(DemoCase),
});
export type Knowledge = z.infer<typeof Knowledge>;

export type CompiledComplaint = z.infer<typeof Complaint>;
export type CompiledContext = z.infer<typeof Context>;
export type CarAttribute = z.infer<typeof CarAttributes>["attributes"][number];
export type PlaceRecord = z.infer<typeof Places>["places"][number];
export type SetUpsFile = z.infer<typeof SetUps>;
export type CautionRecord = z.infer<typeof Caution>;
export type SourceRecord = z.infer<typeof Source>;
export type LayoutRecord = z.infer<typeof LayoutDrawing>;
export type DemoCaseRecord = z.infer<typeof DemoCase>;
export { Line, Logic };
