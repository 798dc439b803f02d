export {
  type Account,
  type AccountChange,
  accountById,
  accountsOfRole,
  anyAccount,
  changeAccount,
  listAccounts,
  makeAccount,
  makeFirstAccount,
  type NewAccount,
} from "./accounts.ts";
export { type AttemptRequest, forgetAttempts, takeAttempt } from "./attempts.ts";
export type { CaseOrder } from "./cursor.ts";
export { type CasesPage, type Holder, listCases, type ListRequest } from "./list-cases.ts";
export { type Appended, appendEntries, type AppendRequest } from "./append-entries.ts";
export { ARCHIVE_LIMITS } from "./archive-form.ts";
export { checkArchive, type OpenArchive, openArchive } from "./archive-read.ts";
export { restoreArchive } from "./archive-restore.ts";
export { writeArchive } from "./archive-write.ts";
export {
  changeExercise,
  type Exercise,
  exerciseById,
  type ExerciseHead,
  exerciseOwner,
  keepExercise,
  listExercises,
  removeExercise,
} from "./exercises.ts";
export {
  type HandOut,
  handOutById,
  listHandOuts,
  makeHandOut,
  openHandOut,
  revokeHandOut,
} from "./hand-outs.ts";
export {
  type Attempt,
  type AttemptChange,
  attemptById,
  attemptEntries,
  changeAttempt,
  startAttempt,
} from "./exercise-attempts.ts";
export {
  attemptChoices,
  type AttemptChoices,
  type AttemptFilter,
  attemptRow,
  type AttemptRow,
  listAttempts,
  ownAttempts,
} from "./attempt-lists.ts";
export {
  type Link,
  linkById,
  listLinks,
  makeLink,
  markLink,
  type NewLink,
  openLink,
  revokeLink,
} from "./links.ts";
export { openStore, storeKind } from "./open.ts";
export {
  keepPhoto,
  type NewPhoto,
  PHOTO_LIMITS,
  type Picture,
  readPhoto,
  removePhoto,
} from "./photos.ts";
export { StoreProblem, type StoreProblemCode } from "./problem.ts";
export {
  type CaseHead,
  caseHead,
  caseVersions,
  entriesAfter,
  type EntriesPage,
  type HeadUrgency,
  idsThatAreThere,
} from "./read-cases.ts";
export {
  type CasesToReckon,
  casesToReckon,
  reckonCases,
  reckonEverythingAnew,
  type Reckoning,
  type Reckoned,
} from "./reckon-cases.ts";
export { removeCase } from "./remove-case.ts";
export { readSetting, removeSetting, settingOnce, writeSetting } from "./settings.ts";
export type { Store, StoreKind, Tables } from "./tables.ts";
export { hashOfToken } from "./token-hash.ts";
