export { CornerwiseError, type ErrorCode } from "./errors.ts";

export { compileKnowledge } from "./knowledge/compile.ts";
export { diffKnowledge, type KnowledgeDiff } from "./knowledge/diff.ts";
export { lintKnowledge, type LintReport } from "./knowledge/lint/index.ts";
export { readKnowledge } from "./knowledge/read.ts";
export { freezeRelease, openRelease, parseRelease, type Release } from "./knowledge/release.ts";
export type { Authored } from "./knowledge/schema/authored.ts";
export type { Knowledge } from "./knowledge/schema/compiled.ts";

export { type Car, type CarInput, readCar, writeCar } from "./car/car.ts";

export {
  type Answer,
  type AnswerProblem,
  findingName,
  groundCar,
  type Grounded,
  parseFinding,
  placeName,
  previewResults,
  type ProposedCheck,
  proposeChecks,
  type RankedSuspect,
  rankingRows,
  type StopNotice,
  stopSignal,
  type Suspect,
  suspectName,
  weigh,
  type Weighed,
  weighing,
  type Weighing,
  whySuspect,
} from "./engine/index.ts";

export { type Proposal, readText, searchChecks, searchFindings, searchParts } from "./words/index.ts";

export {
  type CaseState,
  type Entry,
  entryToUndo,
  exportCase,
  foldCase,
  importCase,
  type JobCard,
  jobCard,
  type KnownEntry,
  mergeEntries,
  parseEntry,
} from "./case/index.ts";

export { answerWeighRequest, WeighAnswer, WeighRequest } from "./requests/weigh-request.ts";
