export { CASE_FORMAT, CASE_LIMITS, CASE_SCHEMA_VERSION } from "./case-file.ts";
export type { CaseAnswer, CaseState, TimelineItem } from "./case-state.ts";
export {
  CaseCar,
  type Entry,
  type EntryOf,
  isByForm,
  isKnownEntry,
  type KnownEntry,
  type UnknownEntry,
} from "./entries.ts";
export { caseUrgency, type Urgency, urgencyRank } from "./case-urgency.ts";
export { BY_FORM, entryLabel, type LabelPart } from "./entry-label.ts";
export { type SaidByForm, saidByForm } from "./said-by-form.ts";
export { exportCase } from "./export.ts";
export { foldCase } from "./fold.ts";
export { importCase } from "./import.ts";
export { jobCard, type WeighedForCard } from "./job-card.ts";
export type {
  CardAdvice,
  CardFinding,
  CardPaired,
  CardSeverity,
  CardSuspect,
  CardWork,
  JobCard,
} from "./job-card-types.ts";
export { type ComparedCase, compareCases, MOVED_BY, whatMoved } from "./moved-cases.ts";
export { mergeEntries } from "./merge.ts";
export { parseEntry } from "./parse-entry.ts";
export { presentContexts } from "./present-contexts.ts";
export { type Situation, situationOf } from "./situation.ts";
export { entriesToUndo, entryToUndo, retractionToRedo } from "./undo.ts";
export { type PlayedCase, type PlayedLine, playWorkedCase, type WorkedCaseInput } from "./worked-case.ts";
