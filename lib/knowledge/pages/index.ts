export { byStrength } from "./by-strength.ts";
export type { CarNeeds } from "./car-limits.ts";
export type { Cause } from "./causes.ts";
export { type CheckPage, checkPage, type Settling } from "./check-page.ts";
export { checksIndex } from "./checks-index.ts";
export type { FaultEntry, Seen, Shown } from "./fault-entry.ts";
export type { Facet } from "./feature-keys.ts";
export {
  type ComplaintPage,
  type ContextPage,
  type FeaturePage,
  type FindingPage,
  findingIds,
  findingPage,
  type ObservationPage,
} from "./finding-page.ts";
export { type FindingsGroup, findingsIndex } from "./findings-index.ts";
export type { LimitOf } from "./limits-of.ts";
export { type PartPage, partPage } from "./part-page.ts";
export { type PartsGroup, partsIndex } from "./parts-index.ts";
export type { SourceTopic, SourceUse } from "./sources.ts";
export { strengthWords } from "./strength-words.ts";
export type { WearCurve } from "./wear-curve.ts";
