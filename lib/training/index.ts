export {
  checkEntries,
  entriesOfStep,
  openingEntries,
  orderEntry,
  stepsOf,
  TRAINEE_KINDS,
} from "./attempt-entries.ts";
export { CHECK_MADE, Conclusion, PART_ORDERED, Step, type Attempt } from "./attempt.ts";
export { type BestCheck, type Debrief, debriefOf, type DebriefStep } from "./debrief.ts";
export {
  type BoardAttempt,
  type ClassBoard,
  classBoard,
  type Cost,
  type Loss,
  LOSSES,
  type Tally,
} from "./class-board.ts";
export { type Difficulty, difficultyOf } from "./difficulty.ts";
export { type DrawWish, drawExercise } from "./draw-exercise.ts";
export {
  exerciseResult,
  placedCheck,
  type ReadyExercise,
  readyExercise,
  toldAnswers,
} from "./exercise-car.ts";
export {
  Course,
  COURSE_FORMAT,
  Exercise,
  EXERCISE_FORM,
  EXERCISE_FORMAT,
  type ExercisesFile,
  openPart,
  type OpenExercise,
  readCourse,
  readExercise,
  readExercisesFile,
} from "./exercise.ts";
export { type ExercisePreview, previewExercise } from "./preview-exercise.ts";
export { lacksOf, whyNotHere } from "./not-here.ts";
export { rampMinutes } from "./ramp-minutes.ts";
export { type KeptResult, KeptStep, readResult, keptResult, resultText } from "./kept-result.ts";
export { type Replay, type ReplayedCheck, replayAttempt } from "./replay.ts";
export { type Score, scoreAttempt } from "./score.ts";
export { drawSaid, type SaidWish } from "./draw-said.ts";
export { saidWords } from "./said-words.ts";
export { Statement, XAPI_VERSION } from "./xapi-statement.ts";
export { statementsOf, type StatementTools, type ToldAttempt } from "./xapi-statements.ts";
