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
export { type Appended, appendEntries, type AppendRequest } from "./append-entries.ts";
export { ARCHIVE_LIMITS } from "./archive-form.ts";
export { checkArchive, type OpenArchive, openArchive } from "./archive-read.ts";
export { restoreArchive } from "./archive-restore.ts";
export { writeArchive } from "./archive-write.ts";
export {
  type Link,
  linkById,
  listLinks,
  makeLink,
  openLink,
  revokeLink,
} from "./links.ts";
export { openStore, storeKind } from "./open.ts";
export { StoreProblem, type StoreProblemCode } from "./problem.ts";
export {
  type CaseHead,
  caseHead,
  type CasesPage,
  caseVersions,
  entriesAfter,
  type EntriesPage,
  listCases,
  type ListRequest,
} from "./read-cases.ts";
export { removeCase } from "./remove-case.ts";
export { readSetting, removeSetting, settingOnce, writeSetting } from "./settings.ts";
export type { Store, StoreKind, Tables } from "./tables.ts";
