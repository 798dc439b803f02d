import { z } from "zod";
import { CASE_LIMITS } from "../case/case-file.ts";

/** Says that a zip file is an archive of ours. */
export const ARCHIVE_FORMAT = "cornerwise-archive";
/** Form of the archive; raised when an older reader could no longer read it rightly. 2: with photos and exercises. */
export const ARCHIVE_SCHEMA_VERSION = 2;
/** Where the zip file says what is in it, and the folders of its lines of cases and photos. */
export const MANIFEST = "manifest.json";
export const ACCOUNTS = "accounts.json";
export const LINKS = "links.json";
export const CASES = "cases/";
export const PHOTOS = "photos/";
/** Folders of lines of exercises, of what was handed out of them, and of attempts. */
export const EXERCISES = "exercises/";
export const HAND_OUTS = "hand-outs/";
export const ATTEMPTS = "attempts/";

/** Limits of an archive that is read: far above a large shop, far below what would fill a server. */
export const ARCHIVE_LIMITS = {
  /** Bytes of the zip file. */
  packed: 2_000_000_000,
  /** Bytes of all files in it, unpacked. */
  unpacked: 8_000_000_000,
  /** Bytes of one file in it. */
  file: 64_000_000,
  files: 20_000,
} as const;

const Id = z.string().min(1).max(200);
const Time = z.string().min(1).max(40);
const Text = z.string().max(10_000);

export const Manifest = z.strictObject({
  format: z.literal(ARCHIVE_FORMAT),
  schemaVersion: z.int().min(1).max(ARCHIVE_SCHEMA_VERSION),
  madeAt: Time,
  cases: z.int().min(0),
  entries: z.int().min(0),
  accounts: z.int().min(0),
  links: z.int().min(0),
  photos: z.int().min(0).default(0),
  exercises: z.int().min(0).default(0),
  handOuts: z.int().min(0).default(0),
  attempts: z.int().min(0).default(0),
  files: z.array(z.strictObject({ name: Id, bytes: z.int().min(0), sha256: z.string().length(64) })),
});
export type Manifest = z.infer<typeof Manifest>;

/** One case: a line of a file under cases/. A removed one has no entries. */
export const ArchivedCase = z.strictObject({
  id: Id,
  ownerId: Id.nullable(),
  changedAt: Time,
  removedAt: Time.nullable(),
  openedAt: Time,
  version: z.int().min(0),
  /** In the order in which they were committed. */
  entries: z
    .array(z.strictObject({ receivedAt: Time, accountId: Id.nullable(), entry: z.unknown() }))
    .max(CASE_LIMITS.entries),
});
export type ArchivedCase = z.infer<typeof ArchivedCase>;

/** A person with the hash of the password; sessions are left out. */
export const ArchivedAccount = z.strictObject({
  id: Id,
  name: Text,
  email: Text,
  emailVerified: z.boolean(),
  image: Text.nullable(),
  role: Id,
  disabled: z.boolean(),
  version: z.int().min(1),
  createdAt: Time,
  updatedAt: Time,
  signIns: z.array(
    z.strictObject({
      id: Id,
      accountId: Id,
      providerId: Id,
      password: Text.nullable(),
      createdAt: Time,
      updatedAt: Time,
    }),
  ),
});
export type ArchivedAccount = z.infer<typeof ArchivedAccount>;

/** A link as the table has it: of its token only the hash. */
export const ArchivedLink = z.strictObject({
  id: Id,
  token_hash: z.string().length(64),
  kind: Id,
  target: Id,
  made_by: Id.nullable(),
  made_at: Time,
  expires_at: Time,
  revoked_at: Time.nullable(),
  words: Text.nullable().default(null),
  opened_at: Time.nullable().default(null),
  done_at: Time.nullable().default(null),
});
export type ArchivedLink = z.infer<typeof ArchivedLink>;

/** One photo: a line of a file under photos/. */
export const ArchivedPhoto = z.strictObject({
  caseId: Id,
  id: Id,
  width: z.int().positive(),
  height: z.int().positive(),
  receivedAt: Time,
  accountId: Id.nullable(),
  linkId: Id.nullable(),
  /** The JPEG file. */
  base64: z.base64().min(1).max(ARCHIVE_LIMITS.file),
});
export type ArchivedPhoto = z.infer<typeof ArchivedPhoto>;
/** Longest exercise as JSON: what one request can bring. */
const Body = z.string().max(1_000_000);

/** Lines of exercises and hand-outs, as their tables have them. */
export const ArchivedExercise = z.strictObject({
  id: Id,
  owner_id: Id.nullable(),
  name: Text,
  body: Body,
  made_at: Time,
  changed_at: Time,
  version: z.int().min(1),
  removed_at: Time.nullable(),
});
export type ArchivedExercise = z.infer<typeof ArchivedExercise>;

export const ArchivedHandOut = z.strictObject({
  id: Id,
  exercise_id: Id,
  body: Body,
  code: Id,
  token_hash: z.string().length(64),
  course: Text.nullable(),
  made_by: Id.nullable(),
  made_at: Time,
  expires_at: Time,
  revoked_at: Time.nullable(),
});
export type ArchivedHandOut = z.infer<typeof ArchivedHandOut>;

/** One attempt with its entries, in the order in which they were kept; of its browser's key only the hash. */
export const ArchivedAttempt = z.strictObject({
  id: Id,
  hand_out_id: Id,
  exercise_id: Id,
  trainee_id: Id.nullable(),
  name: Text,
  token_hash: z.string().length(64).nullable(),
  started_at: Time,
  ended_at: Time.nullable(),
  score: Body.nullable(),
  entries: z.array(z.strictObject({ receivedAt: Time, entry: z.unknown() })).max(CASE_LIMITS.entries),
});
export type ArchivedAttempt = z.infer<typeof ArchivedAttempt>;
