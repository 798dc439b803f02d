export { canonicalJson, type Sha256, sha256Hex } from "./canonical.ts";
export { compileKnowledge } from "./compile.ts";
export {
  diffKnowledge,
  isEmptyDiff,
  type KnowledgeDiff,
  RECORD_KINDS,
  type RecordChanges,
  type WeightChange,
} from "./diff.ts";
export { goneIds } from "./gone-ids.ts";
export { type Coverage, coverageOf, type FamilyCoverage } from "./health/coverage.ts";
export { type InseparablePair, inseparablePairs } from "./health/inseparable-pairs.ts";
export { type Reach, type ReachedFault, readReach, weakestFaults } from "./health/reach.ts";
export { type UnsourcedFault, type UnsourcedPart, unsourcedLinks } from "./health/unsourced-links.ts";
export { jsonSchemas, toJsonSchema } from "./json-schema.ts";
export { layPicture } from "./lay-picture.ts";
export { type LintException, readExceptions } from "./lint/exceptions.ts";
export { LINT_RULES, type LintReport, lintKnowledge } from "./lint/index.ts";
export { APART_RATIO } from "./lint/telling-apart.ts";
export type { LintFinding, LintProblem, LintRule } from "./lint/rule.ts";
export { checkLogic, evaluateLogic, LOGIC_DEPTH, LOGIC_NODES, LOGIC_OPERATORS } from "./logic.ts";
export { type KnowledgeProblem, problemLine } from "./problems.ts";
export { readKnowledge } from "./read.ts";
export { freezeRelease, openRelease, parseRelease, type Release, SCHEMA_VERSION } from "./release.ts";
export type { Authored } from "./schema/authored.ts";
export type {
  CarAttribute,
  CautionRecord,
  CompiledCheck,
  CompiledComplaint,
  CompiledContext,
  CompiledFault,
  CompiledFeature,
  CompiledLink,
  CompiledObservation,
  CompiledPart,
  CompiledShowing,
  DemoCaseRecord,
  LayoutRecord,
  PlaceRecord,
  SetUpsFile,
  SourceRecord,
  Weight,
} from "./schema/compiled.ts";
export type { LayPicture } from "./schema/lay.ts";
export { Knowledge } from "./schema/compiled.ts";
export { changeWords, weightWords, type WeightWords } from "./weight-words.ts";
