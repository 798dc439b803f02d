import type { Entry } from "../../lib/case/entries.ts";
import { parseEntry } from "../../lib/case/parse-entry.ts";
import type { Reply } from "./door.ts";
import { MeReply, PulledReply, SentReply } from "./replies.ts";
import type { Trouble } from "./trouble.ts";

/** Meanings that hold for everything, not for one case only. */
export type ServerMeaning =
  /** No reply, or one that was not our server's. */
  | { readonly is: "lost" }
  /** Served without data routes, as from plain files. */
  | { readonly is: "no-server" }
  | { readonly is: "sign-in" }
  | { readonly is: "owner-needed" }
  /** The server is there but cannot do it now. */
  | { readonly is: "busy"; readonly trouble: Trouble; readonly waitMs?: number };

/** Meanings that hold for one case. */
export type CaseMeaning =
  /** The server stumbled over this case; others may go well. */
  | { readonly is: "stumbled" }
  /** The server does not know the case, or does not show it. */
  | { readonly is: "unknown-case" }
  /** This case does not go out as it is. */
  | { readonly is: "stopped"; readonly trouble: Trouble };

export type SentMeaning =
  | { readonly is: "kept"; readonly version: number; readonly added: number; readonly ids: readonly string[] }
  /** Something in the batch is not taken. */
  | { readonly is: "refused"; readonly trouble: Trouble }
  | CaseMeaning
  | ServerMeaning;

export type PulledMeaning =
  | {
      readonly is: "pulled";
      readonly version: number;
      /** Number of the last entry given; 0 when there was none. */
      readonly upTo: number;
      readonly entries: readonly Entry[];
      /** How many this version of the app could not read. */
      readonly unread: number;
    }
  | CaseMeaning
  | ServerMeaning;

/** What a reply to sent entries means. */
export function meaningOfSent(reply: Reply): SentMeaning {
  if (reply.is === "reply" && reply.status === 200) {
    const sent = SentReply.safeParse(reply.json);
    if (!sent.success) return { is: "lost" };
    const { version, added, known } = sent.data;
    return { is: "kept", version, added: added.length, ids: [...added, ...known] };
  }
  if (reply.is === "reply" && [400, 409, 413, 422].includes(reply.status) && reply.problem !== undefined)
    return { is: "refused", trouble: troubleOf(reply) };
  return meaningOfFailure(reply);
}

/** What a reply to a request for entries of a case means. */
export function meaningOfPulled(reply: Reply, caseId: string): PulledMeaning {
  if (reply.is !== "reply" || reply.status !== 200) return meaningOfFailure(reply);
  const pulled = PulledReply.safeParse(reply.json);
  if (!pulled.success) return { is: "lost" };
  return { is: "pulled", version: pulled.data.version, ...readPulled(pulled.data.entries, caseId) };
}

/** Entries as the server lists them, each looked at by itself: one that is not understood hinders no other. */
export function readPulled(
  listed: PulledReply["entries"],
  caseId?: string,
): { readonly upTo: number; readonly entries: readonly Entry[]; readonly unread: number } {
  const entries: Entry[] = [];
  for (const { entry } of listed) {
    try {
      const read = parseEntry(entry);
      if (caseId === undefined || read.caseId === caseId) entries.push(read);
    } catch {
      // Counted as unread below.
    }
  }
  const upTo = listed.reduce((most, { seq }) => Math.max(most, seq), 0);
  return { upTo, entries, unread: listed.length - entries.length };
}

/** Who we are to the server, or why it does not say. */
export function meaningOfMe(reply: Reply): { readonly is: "me"; readonly me: MeReply } | ServerMeaning {
  if (reply.is === "reply" && reply.status === 200) {
    const me = MeReply.safeParse(reply.json);
    return me.success ? { is: "me", me: me.data } : { is: "lost" };
  }
  const meaning = meaningOfFailure(reply);
  switch (meaning.is) {
    case "unknown-case":
    case "stopped":
      return { is: "no-server" };
    case "stumbled":
      return { is: "lost" };
    default:
      return meaning;
  }
}

/** What a reply means that did not do what was asked. */
export function meaningOfFailure(reply: Reply): CaseMeaning | ServerMeaning {
  if (reply.is === "lost") return reply;
  const { status, problem } = reply;
  if (problem === undefined) {
    // Plain files, or something between: our own server always says what is wrong.
    if (status === 404 || status === 405 || status === 501) return { is: "no-server" };
    if (status === 429) return { is: "busy", trouble: { code: "too-many" }, ...waitOf(reply) };
    return { is: "lost" };
  }
  switch (status) {
    case 401:
      return { is: "sign-in" };
    case 404:
      return { is: "unknown-case" };
    case 429:
      return { is: "busy", trouble: troubleOf(reply), ...waitOf(reply) };
    case 503:
      if (problem.code === "no-owner-yet") return { is: "owner-needed" };
      return { is: "busy", trouble: troubleOf(reply), ...waitOf(reply) };
    case 507:
      return { is: "busy", trouble: troubleOf(reply), ...waitOf(reply) };
    default:
      return status >= 500 ? { is: "stumbled" } : { is: "stopped", trouble: troubleOf(reply) };
  }
}

function waitOf(reply: Extract<Reply, { is: "reply" }>): { readonly waitMs?: number } {
  return reply.retryAfterMs === undefined ? {} : { waitMs: reply.retryAfterMs };
}

/** Longest sentence of the server that is kept. */
const LONGEST_DETAIL = 500;

function troubleOf(reply: Extract<Reply, { is: "reply" }>): Trouble {
  const { problem } = reply;
  if (problem === undefined) return { code: `status-${reply.status}` };
  const detail = problem.detail ?? problem.title;
  return { code: problem.code, ...(detail !== "" && { detail: detail.slice(0, LONGEST_DETAIL) }) };
}
