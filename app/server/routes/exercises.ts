import { route } from "../route-description.ts";
import {
  AddedToAttempt,
  AttemptFilter,
  AttemptList,
  AttemptsQuery,
  BegunAttempt,
  Course,
  Debrief,
  Ended,
  Exercise,
  ExerciseHead,
  ExerciseList,
  HandOutList,
  IdParams,
  KeptExercise,
  MadeHandOut,
  NewAttempt,
  NewAttemptEntries,
  NewCheck,
  NewHandOut,
  NewOrder,
  NewVerdict,
  OwnAttempts,
  WorkedAttempt,
} from "../schemas/exercises.ts";

const VERSION = { etag: "The exercise's version, for If-Match." };
const ONE_EXERCISE = { params: IdParams, missing: "no-such-exercise" } as const;
const ONE_ATTEMPT = { params: IdParams, missing: "no-such-attempt" } as const;

export const listExercises = route({
  method: "GET",
  path: "/api/v1/exercises",
  action: "keep-exercises",
  summary: "The exercises that the asker may change, the last changed first",
  gives: { status: 200, what: "The heads", body: ExerciseList },
});

export const makeExercise = route({
  method: "POST",
  path: "/api/v1/exercises",
  action: "keep-exercises",
  summary: "Keep a new exercise, once its car could be made",
  body: Exercise,
  gives: { status: 201, what: "Its head", body: ExerciseHead, headers: VERSION },
});

export const readExercise = route({
  method: "GET",
  path: "/api/v1/exercises/{id}",
  action: "keep-exercises",
  summary: "One exercise, with what is hidden in it",
  ...ONE_EXERCISE,
  gives: { status: 200, what: "The exercise", body: KeptExercise, headers: VERSION },
});

export const changeExercise = route({
  method: "PUT",
  path: "/api/v1/exercises/{id}",
  action: "keep-exercises",
  summary: "Change an exercise; what was handed out of it stays as it was",
  ...ONE_EXERCISE,
  body: Exercise,
  ifMatch: true,
  gives: { status: 200, what: "Its head as it is now", body: ExerciseHead, headers: VERSION },
});

export const removeExercise = route({
  method: "DELETE",
  path: "/api/v1/exercises/{id}",
  action: "keep-exercises",
  summary: "Take an exercise out of the list and end what was handed out of it; attempts stay",
  ...ONE_EXERCISE,
  gives: { status: 204, what: "Removed" },
});

export const listHandOuts = route({
  method: "GET",
  path: "/api/v1/exercises/{id}/hand-outs",
  action: "keep-exercises",
  summary: "What was handed out of an exercise, the newest first",
  ...ONE_EXERCISE,
  gives: { status: 200, what: "The hand-outs, without their tokens", body: HandOutList },
});

export const makeHandOut = route({
  method: "POST",
  path: "/api/v1/exercises/{id}/hand-outs",
  action: "keep-exercises",
  summary: "Hand an exercise out as it is now, by a short code and a link",
  ...ONE_EXERCISE,
  body: NewHandOut,
  gives: { status: 201, what: "The hand-out; its token is not shown again", body: MadeHandOut },
});

export const readReadyExercises = route({
  method: "GET",
  path: "/api/v1/ready-exercises",
  action: "keep-exercises",
  summary: "The ready exercises as a course, with what is hidden in them: to be kept one by one",
  gives: { status: 200, what: "The course", body: Course },
});

export const revokeHandOut = route({
  method: "DELETE",
  path: "/api/v1/hand-outs/{id}",
  action: "keep-exercises",
  summary: "Nobody begins by this code or link any more; attempts that were begun go on",
  params: IdParams,
  missing: "no-such-hand-out",
  gives: { status: 204, what: "Ended" },
});

export const listAttempts = route({
  method: "GET",
  path: "/api/v1/attempts",
  action: "see-board",
  summary: "Attempts at the asker's exercises, the last begun first",
  query: AttemptsQuery,
  gives: { status: 200, what: "One page", body: AttemptList },
});

export const readAttemptsTable = route({
  method: "GET",
  path: "/api/v1/attempts.csv",
  action: "see-board",
  summary: "Attempts at the asker's exercises as a table",
  query: AttemptFilter,
  gives: { status: 200, what: "Comma-separated values (RFC 4180)", mediaType: "text/csv" },
});

export const beginAttempt = route({
  method: "POST",
  path: "/api/v1/attempts",
  action: "work-exercise",
  summary: "Begin an attempt by a code or a link; with an account it is the account's",
  body: NewAttempt,
  gives: { status: 201, what: "The attempt", body: BegunAttempt },
  problems: ["no-such-hand-out", "no-such-attempt", "attempt-over", "changed-meanwhile", "too-many-tries"],
});

export const readOwnAttempts = route({
  method: "GET",
  path: "/api/v1/attempts/mine",
  action: "work-exercise",
  summary: "The attempts of the account or of the browser, whose key comes as Bearer",
  token: true,
  gives: { status: 200, what: "The attempts, the last begun first", body: OwnAttempts },
});

export const readAttempt = route({
  method: "GET",
  path: "/api/v1/attempts/{id}",
  action: "work-exercise",
  summary: "An attempt: the exercise without what is hidden, and what was done",
  ...ONE_ATTEMPT,
  token: true,
  gives: { status: 200, what: "The attempt", body: WorkedAttempt },
});

export const makeCheck = route({
  method: "POST",
  path: "/api/v1/attempts/{id}/checks",
  action: "work-exercise",
  summary: "Make a check or ask a question; repeated, it finds the same",
  ...ONE_ATTEMPT,
  token: true,
  body: NewCheck,
  gives: { status: 200, what: "What it found, as entries", body: AddedToAttempt },
  problems: ["attempt-over", "entry-differs", "not-possible-here", "time-over"],
});

export const addAttemptEntries = route({
  method: "POST",
  path: "/api/v1/attempts/{id}/entries",
  action: "work-exercise",
  summary:
    "Add notes, cautions that were read and checks that were not possible; results come from checks alone",
  ...ONE_ATTEMPT,
  token: true,
  body: NewAttemptEntries,
  gives: { status: 200, what: "What was new", body: AddedToAttempt },
  problems: ["attempt-over", "entry-differs"],
});

export const orderPart = route({
  method: "POST",
  path: "/api/v1/attempts/{id}/orders",
  action: "work-exercise",
  summary: "Order a part before the verdict",
  ...ONE_ATTEMPT,
  token: true,
  body: NewOrder,
  gives: { status: 200, what: "The order, as an entry", body: AddedToAttempt },
  problems: ["attempt-over", "entry-differs"],
});

export const giveVerdict = route({
  method: "POST",
  path: "/api/v1/attempts/{id}/verdict",
  action: "work-exercise",
  summary: "Name the cause and how sure one is of it: the attempt ends and is scored",
  ...ONE_ATTEMPT,
  token: true,
  body: NewVerdict,
  gives: { status: 200, what: "How it went", body: Ended },
  problems: ["attempt-over", "entry-differs", "changed-meanwhile"],
});

export const readDebrief = route({
  method: "GET",
  path: "/api/v1/attempts/{id}/debrief",
  action: "work-exercise",
  summary: "The attempt step by step beside the reasoning; for the trainee once the verdict is given",
  ...ONE_ATTEMPT,
  token: true,
  gives: { status: 200, what: "The debrief, with what is hidden", body: Debrief },
  problems: ["attempt-open"],
});
