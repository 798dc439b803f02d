export { booking, type Booking, type Spread } from "./advice/booking.ts";
export { type Course, type CourseOptions, drawCourse } from "./advice/course.ts";
export { type Danger, type DriveAdvice, driveAdvice } from "./advice/drive-advice.ts";
export { type PartReady, partsReady } from "./advice/parts-ready.ts";
export type { Answer, AnswerProblem, AnswerState } from "./answers.ts";
export { askNext } from "./ask-next.ts";
export type { AskNextOptions } from "./ask-next.ts";
export type { LayAnswer, LayChoice, LayQuestion } from "./lay/lay-question.ts";
export { proposeBatch } from "./batch.ts";
export type { Batch, BatchedCheck, BatchOptions } from "./batch.ts";
export { placedChecks } from "./check-places.ts";
export type { PlacedCheck } from "./check-places.ts";
export { decideNext } from "./decide.ts";
export type { Choice, DecideOptions, Decision, LikelyRepair } from "./decide.ts";
export { type MindChanger, mindChangers } from "./doubt/mind-changers.ts";
export { type AnswerFit, type Misfit, misfit } from "./doubt/misfit.ts";
export {
  mindWords,
  misfitWords,
  steadyWords,
  unexplainedWords,
  weightWords,
  whySentence,
} from "./doubt/sentences.ts";
export { drawSteadiness, type Rival, type Steadiness, steadiness } from "./doubt/steadiness.ts";
export { findingName, parseFinding } from "./finding-id.ts";
export type { Finding } from "./finding-id.ts";
export { forbiddenCheck } from "./forbidden.ts";
export type { Forbidden } from "./forbidden.ts";
export { groundCar } from "./ground.ts";
export type { Grounded } from "./ground.ts";
export { placeName, repairName, rowName, suspectName } from "./names.ts";
export { previewResults } from "./preview.ts";
export type { PreviewedResult } from "./preview.ts";
export { fittedThatHold } from "./part-ages.ts";
export type { FittedPart } from "./part-ages.ts";
export { proposeChecks } from "./propose.ts";
export type { ProposedCheck, ProposeOptions, Settled } from "./propose.ts";
export { publishedShares, sharesByAge } from "./published-shares.ts";
export type { GroupByAge, ShareLine } from "./published-shares.ts";
export { rankingRows } from "./ranking-rows.ts";
export type { RankingRow } from "./ranking-rows.ts";
export { repairOf, repairOfSuspect, workshopCosts } from "./repair-cost.ts";
export type { CostOverrides } from "./repair-cost.ts";
export type { StopNotice } from "./stop-notices.ts";
export { stopSignal } from "./stop-signal.ts";
export type { StopSignal } from "./stop-signal.ts";
export type { Suspect } from "./suspect.ts";
export { typicalPriors } from "./typical-priors.ts";
export { wearView } from "./wear-view.ts";
export type { WearLine, WearOptions } from "./wear-view.ts";
export { bounded, weigh, weighing } from "./weigh.ts";
export type { Bounds, ExplainingSet, RankedSuspect, Weighed, Weighing } from "./weigh.ts";
export { whySuspect } from "./why.ts";
export type { AnswerWeight, Why } from "./why.ts";
