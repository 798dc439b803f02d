import type { Entry } from "../../lib/case/entries.ts";
import type { Place, UnsentRow } from "../store/open-database.ts";
import type { Door } from "./door.ts";
import type { MeReply } from "./replies.ts";
import type { Trouble } from "./trouble.ts";

/** What is kept on the device for sending and fetching; each call is one transaction. */
export interface SyncStore {
  sending(): Promise<{ readonly unsent: readonly UnsentRow[]; readonly places: readonly Place[] }>;
  /** Entries by their ids; those that are gone are left out. */
  entries(ids: readonly string[]): Promise<readonly Entry[]>;
  /** The server has these: they no longer wait. `place` is written as given. */
  acknowledged(ids: readonly string[], place: Place): Promise<void>;
  /**
   * Puts in what is missing and writes the place; entries that are here stay as they are.
   *
   * Does nothing when the place has moved on from `from` meanwhile: the case was removed here, or fetched by another tab.
   */
  takeIn(entries: readonly Entry[], from: number, place: Place): Promise<void>;
  /** Marks an entry as not taken. */
  refuse(id: string, trouble: Trouble): Promise<void>;
  /** Marks a case as not going out. */
  stop(caseId: string, trouble: Trouble): Promise<void>;
  /** The server no longer has what it had: every entry of the case that is here waits again. */
  queueAgain(caseId: string): Promise<void>;
  /**
   * Notes which database the server works on.
   *
   * Another one than before knows nothing of what went out: then every case that had gone out waits again.
   */
  settleHistory(history: string): Promise<void>;
  /** What was refused or stopped is tried once more. */
  forgive(): Promise<void>;
}

/** How things stand with the server. */
export type Standing =
  | { readonly is: "unknown" | "answers" | "no-server" | "sign-in" | "owner-needed" }
  | { readonly is: "away"; readonly trouble?: Trouble };

interface CaseMemory {
  failures: number;
  notBefore: number;
  /** Most entries of one batch; smaller after a refusal, until the one at fault is found. */
  most: number;
  heard: number;
  asked: boolean;
  /** How many screens show it. */
  open: number;
}

/** What one tab remembers between two steps; nothing of it is needed after a restart. */
export interface SyncMemory {
  standing: Standing;
  me: MeReply | undefined;
  failures: number;
  notBefore: number;
  readonly cases: Map<string, CaseMemory>;
}

export interface SyncTools {
  readonly store: SyncStore;
  readonly door: Door;
  /** Whose database this is; undefined for use without accounts. */
  readonly personId: string | undefined;
  /** Milliseconds. */
  readonly now: () => number;
  /** From 0 to 1. */
  readonly random: () => number;
  /** The kept part of a case has changed. */
  readonly onChange: (caseId: string) => void;
}

export function newMemory(): SyncMemory {
  return { standing: { is: "unknown" }, me: undefined, failures: 0, notBefore: 0, cases: new Map() };
}

/** What is remembered of a case; made when there is nothing yet. */
export function memoryOf(memory: SyncMemory, caseId: string, most: number): CaseMemory {
  const known = memory.cases.get(caseId);
  if (known !== undefined) return known;
  const fresh = { failures: 0, notBefore: 0, most, heard: 0, asked: false, open: 0 };
  memory.cases.set(caseId, fresh);
  return fresh;
}
