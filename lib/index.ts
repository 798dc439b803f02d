export { CornerwiseError, type ErrorCode } from "./errors.ts";

export { compileKnowledge } from "./knowledge/compile.ts";
export { diffKnowledge, type KnowledgeDiff } from "./knowledge/diff.ts";
export { layPicture } from "./knowledge/lay-picture.ts";
export { lintKnowledge, type LintReport } from "./knowledge/lint/index.ts";
export { readKnowledge } from "./knowledge/read.ts";
export { freezeRelease, openRelease, parseRelease, type Release } from "./knowledge/release.ts";
export type { Authored } from "./knowledge/schema/authored.ts";
export type { LayPicture } from "./knowledge/schema/lay.ts";
export type { Knowledge } from "./knowledge/schema/compiled.ts";

export { type Car, type CarInput, readCar, writeCar } from "./car/car.ts";
export { playDegrees, playMm } from "./car/free-play.ts";
export { matchOrders, type VibrationOrder, vibrationOrders } from "./car/orders.ts";
export { type LimitStanding, type MeasuredPlay, playLimits } from "./car/play-limits.ts";
export { readRecording, type Recording } from "./car/recording.ts";
export { readRecordingCsv, writeRecordingCsv } from "./car/recording-csv.ts";
export { type ShaftRates, shaftRates } from "./car/shaft-rates.ts";
export { parseTyreSize, type TyreSize, tyreGeometry, writeTyreSize } from "./car/tyre-size.ts";
export { vibrationPeaks, type VibrationPeak, type VibrationSpectrum } from "./car/vibration-peaks.ts";

export {
  type Answer,
  type AnswerProblem,
  askNext,
  type AskNextOptions,
  booking,
  type Booking,
  type Course,
  type CourseOptions,
  drawCourse,
  type DriveAdvice,
  driveAdvice,
  findingName,
  type LayAnswer,
  type LayChoice,
  type LayQuestion,
  mindChangers,
  type MindChanger,
  misfit,
  type Misfit,
  steadiness,
  type Steadiness,
  groundCar,
  type Grounded,
  parseFinding,
  type PartReady,
  partsReady,
  placedChecks,
  placeName,
  previewResults,
  type ProposedCheck,
  proposeChecks,
  publishedShares,
  type RankedSuspect,
  rankingRows,
  type ShareLine,
  sharesByAge,
  type StopNotice,
  stopSignal,
  type Suspect,
  suspectName,
  type WearLine,
  wearView,
  weigh,
  bounded,
  type Bounds,
  type Weighed,
  weighing,
  type Weighing,
  whySuspect,
} from "./engine/index.ts";

export {
  customerMessage,
  type Message,
  type MessageParts,
  type Proposal,
  type ReadOptions,
  readText,
  searchChecks,
  searchFindings,
  searchParts,
  sidesByTraffic,
  type SideWords,
  type Traffic,
} from "./words/index.ts";

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

export { answerDoubtRequest, DoubtAnswer, DoubtRequest } from "./requests/doubt-request.ts";
export { answerOrdersRequest, OrdersAnswer, OrdersRequest } from "./requests/orders-request.ts";
export { answerPlayRequest, PlayAnswer, PlayRequest } from "./requests/play-request.ts";
export { answerWearRequest, WearAnswer, WearRequest } from "./requests/wear-request.ts";
export { answerWeighRequest, WeighAnswer, WeighRequest } from "./requests/weigh-request.ts";
