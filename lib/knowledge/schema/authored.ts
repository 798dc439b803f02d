import type { z } from "zod";
import { Costs } from "./costs.ts";
import { DemoCase } from "./demo-cases.ts";
import { Advice } from "./advice.ts";
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
  Manifest,
  Places,
  Profile,
  Reports,
  Scale,
  SetUps,
  Source,
} from "./vocabulary.ts";
import { Words } from "./words.ts";
import { WorkedCase } from "./worked-cases.ts";

/** Folder name -> schema of each record in it. */
export const RECORD_FOLDERS = {
  parts: Part,
  faults: Fault,
  complaints: Complaint,
  features: Feature,
  observations: Observation,
  contexts: Context,
  profiles: Profile,
  checks: Check,
  cautions: Caution,
  sources: Source,
  layouts: LayoutDrawing,
  "demo-cases": DemoCase,
  "worked-cases": WorkedCase,
} as const;

/** File name in the knowledge folder -> schema of the whole file. */
export const SINGLE_FILES = {
  "manifest.json": Manifest,
  "scale.json": Scale,
  "places.json": Places,
  "car.json": CarAttributes,
  "set-ups.json": SetUps,
  "reports.json": Reports,
  "groups.json": Groups,
  "words.json": Words,
  "costs.json": Costs,
  "orders.json": Orders,
  "limits.json": Limits,
  "published-shares.json": PublishedShares,
  "doubt.json": Doubt,
  "advice.json": Advice,
  "lay.json": Lay,
} as const;

type Of<S extends z.ZodType> = z.output<S>;

/** The authored knowledge, every file parsed, in the order of ids. */
export interface Authored {
  readonly manifest: Of<typeof Manifest>;
  readonly scale: Of<typeof Scale>;
  readonly places: Of<typeof Places>;
  readonly car: Of<typeof CarAttributes>;
  readonly setUps: Of<typeof SetUps>;
  readonly reports: Of<typeof Reports>;
  readonly groups: Of<typeof Groups>;
  readonly words: Of<typeof Words>;
  readonly costs: Of<typeof Costs>;
  readonly orders: Of<typeof Orders>;
  readonly limits: Of<typeof Limits>;
  readonly publishedShares: Of<typeof PublishedShares>;
  readonly doubt: Of<typeof Doubt>;
  readonly advice: Of<typeof Advice>;
  readonly lay: Of<typeof Lay>;
  readonly parts: readonly Of<typeof Part>[];
  readonly faults: readonly Of<typeof Fault>[];
  readonly complaints: readonly Of<typeof Complaint>[];
  readonly features: readonly Of<typeof Feature>[];
  readonly observations: readonly Of<typeof Observation>[];
  readonly contexts: readonly Of<typeof Context>[];
  readonly profiles: readonly Of<typeof Profile>[];
  readonly checks: readonly Of<typeof Check>[];
  readonly cautions: readonly Of<typeof Caution>[];
  readonly sources: readonly Of<typeof Source>[];
  readonly layouts: readonly Of<typeof LayoutDrawing>[];
  readonly demoCases: readonly Of<typeof DemoCase>[];
  readonly workedCases: readonly Of<typeof WorkedCase>[];
}
