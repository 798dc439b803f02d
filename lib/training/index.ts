export { Conclusion, Step, type Attempt } from "./attempt.ts";
export { type Difficulty, difficultyOf } from "./difficulty.ts";
export { type DrawWish, drawExercise } from "./draw-exercise.ts";
export {
  exerciseResult,
  placedCheck,
  type ReadyExercise,
  readyExercise,
  toldAnswers,
} from "./exercise-car.ts";
export { Course, Exercise, openPart, type OpenExercise, readCourse, readExercise } from "./exercise.ts";
export { type ExercisePreview, previewExercise } from "./preview-exercise.ts";
export { type Replay, type ReplayedCheck, replayAttempt } from "./replay.ts";
export { type Score, scoreAttempt } from "./score.ts";
