import type { Generated, Kysely } from "kysely";

/** Yes or no: 0 and 1 in the embedded database. */
export type Flag = 0 | 1;
/** In the tables of accounts: text in the embedded database, a point in time in PostgreSQL. */
export type Moment = string | Date;

/** One row a case: what a list shows, folded from its entries whenever one of them changes it. */
export interface CasesTable {
  id: string;
  owner_id: string | null;
  opened_at: string;
  changed_at: string;
  /** Number of entries ever added; the `seq` of the last one. */
  version: number;
  /** Length of the case file that the entries make. */
  characters: number;
  customer: string;
  vehicle: string;
  plate: string | null;
  /** Customer, vehicle and plate, made plain for searching. */
  search: string;
  invented: Flag;
  closed: Flag;
  removed_at: string | null;
  /** Account and name of who has it; null: nobody, or nobody with an account. */
  assigned_to: string | null;
  assigned_name: string | null;
  /** The `seq` of the last entry that can change how urgent it is. */
  told_version: number;
  /** The `told_version` up to which the urgency was reckoned; 0: never. */
  reckoned_version: number;
  /** Place among the open cases, the most urgent first. */
  urgency: number;
  /** Level of the advice; "": nothing was told; null: not known. */
  level: string | null;
  danger: number | null;
  /** Why the urgency could not be reckoned. */
  reckon_problem: string | null;
}

/** Entries as they came, once each; never changed. */
export interface EntriesTable {
  case_id: string;
  /** 1, 2, 3 ... in the order in which they were committed, without gaps. */
  seq: number;
  id: string;
  /** When the device says that it was made. */
  at: string;
  kind: string;
  /** The whole entry as canonical JSON. */
  body: string;
  received_at: string;
  account_id: string | null;
}

/** Links for outsiders; the token itself is not kept. */
export interface LinksTable {
  id: string;
  token_hash: string;
  kind: string;
  target: string;
  made_by: string | null;
  made_at: string;
  expires_at: string;
  revoked_at: string | null;
  /** For a form: what the workshop says to the customer, when it was opened first, when the customer was done. */
  words: string | null;
  opened_at: string | null;
  done_at: string | null;
}

/** Bytes of a file: the embedded database gives a buffer, PostgreSQL an array. */
export type Bytes = Uint8Array | ArrayBuffer;

/** Photos of cases, as JPEG. */
export interface PhotosTable {
  case_id: string;
  id: string;
  width: number;
  height: number;
  /** Length of `bytes`. */
  size: number;
  received_at: string;
  account_id: string | null;
  /** The link whose form it came by. */
  link_id: string | null;
  bytes: Bytes;
}

export interface SettingsTable {
  key: string;
  value: string;
}

/** A person with an account. */
export interface UserTable {
  id: string;
  name: string;
  email: string;
  emailVerified: Flag | boolean;
  image: string | null;
  role: string;
  disabled: Flag | boolean;
  createdAt: Moment;
  updatedAt: Moment;
  /** Counts the changes that owners made. */
  version: Generated<number>;
}

export interface SessionTable {
  id: string;
  userId: string;
  token: string;
  expiresAt: Moment;
  ipAddress: string | null;
  userAgent: string | null;
  createdAt: Moment;
  updatedAt: Moment;
}

/** A way to sign in; for a password, its hash. */
export interface AccountTable {
  id: string;
  userId: string;
  accountId: string;
  providerId: string;
  accessToken: string | null;
  refreshToken: string | null;
  idToken: string | null;
  accessTokenExpiresAt: Moment | null;
  refreshTokenExpiresAt: Moment | null;
  scope: string | null;
  password: string | null;
  createdAt: Moment;
  updatedAt: Moment;
}

export interface VerificationTable {
  id: string;
  identifier: string;
  value: string;
  expiresAt: Moment;
  createdAt: Moment;
  updatedAt: Moment;
}

export interface RateLimitTable {
  id: string;
  key: string;
  count: number;
  /** Milliseconds since 1970. */
  lastRequest: number;
}

/** An exercise as its instructor has it now. */
export interface ExercisesTable {
  id: string;
  owner_id: string | null;
  name: string;
  /** The exercise as JSON. */
  body: string;
  made_at: string;
  changed_at: string;
  version: number;
  /** Out of the lists; what was handed out of it stays readable. */
  removed_at: string | null;
}

/** An exercise as it was when it was handed out; begun by its code or by its token, of which the hash is kept. */
export interface HandOutsTable {
  id: string;
  exercise_id: string;
  body: string;
  code: string;
  token_hash: string;
  course: string | null;
  made_by: string | null;
  made_at: string;
  expires_at: string;
  revoked_at: string | null;
}

/** One trainee's go at an exercise: with an account, or with a token of the browser that it was begun in. */
export interface AttemptsTable {
  id: string;
  hand_out_id: string;
  exercise_id: string;
  trainee_id: string | null;
  name: string;
  token_hash: string | null;
  started_at: string;
  ended_at: string | null;
  /** How it went, as JSON, once it has ended. */
  score: string | null;
  /** Number of its entries; the `seq` of the last one. */
  version: number;
}

/** Entries of an attempt, never changed. */
export interface AttemptEntriesTable {
  attempt_id: string;
  seq: number;
  id: string;
  at: string;
  kind: string;
  body: string;
  received_at: string;
}

/** Every table, as the newest migration leaves it. */
export interface Tables {
  cases: CasesTable;
  entries: EntriesTable;
  links: LinksTable;
  photos: PhotosTable;
  settings: SettingsTable;
  user: UserTable;
  session: SessionTable;
  account: AccountTable;
  verification: VerificationTable;
  rateLimit: RateLimitTable;
  exercises: ExercisesTable;
  hand_outs: HandOutsTable;
  attempts: AttemptsTable;
  attempt_entries: AttemptEntriesTable;
}

export type StoreKind = "embedded" | "postgres";

/** An open database. */
export interface Store {
  readonly db: Kysely<Tables>;
  readonly kind: StoreKind;
  /** The path or address that it was opened with. */
  readonly database: string;
  /** Ends every connection; the store cannot be used afterwards. */
  readonly close: () => Promise<void>;
}
