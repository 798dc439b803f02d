import type { Ask, Reply } from "../../app/sync/door.ts";
import { canonicalJson } from "../../lib/knowledge/canonical.ts";
import type { Entry } from "../../lib/case/index.ts";

/** The server as its contract describes it, in memory: numbered entries of each case, taken once each, all or nothing. */
export interface ModelServer {
  readonly cases: Map<string, Entry[]>;
  readonly removed: Set<string>;
  /** Goes on from an older copy, in another database. */
  restore(copy: ReadonlyMap<string, readonly Entry[]>): void;
  readonly answer: (ask: Ask) => Reply;
}

interface Refusal {
  readonly status: number;
  readonly code: string;
}

/** `refuses` says of one entry why it is not taken, if it is not. */
export function modelServer(refuses: (entry: Entry) => Refusal | undefined = () => undefined): ModelServer {
  const cases = new Map<string, Entry[]>();
  const removed = new Set<string>();
  let restored = 0;

  const take = (caseId: string, entries: readonly Entry[]): Reply => {
    if (removed.has(caseId)) return problem(410, "case-removed");
    const held = cases.get(caseId);
    if (held === undefined && !entries.some((entry) => entry.kind === "opened"))
      return problem(404, "no-such-case");
    const known = new Map((held ?? []).map((entry) => [entry.id, canonicalJson(entry)]));
    for (const entry of entries) {
      const refusal = refuses(entry);
      if (refusal !== undefined) return problem(refusal.status, refusal.code);
      const other = known.get(entry.id);
      if (other !== undefined && other !== canonicalJson(entry)) return problem(409, "entry-differs");
    }
    const fresh = entries.filter((entry) => !known.has(entry.id));
    const now = [...(held ?? []), ...fresh];
    cases.set(caseId, now);
    const added = fresh.map((entry) => entry.id);
    const again = entries.filter((entry) => known.has(entry.id)).map((entry) => entry.id);
    return reply(200, { version: now.length, added, known: again });
  };

  const give = (caseId: string, after: number, limit: number): Reply => {
    if (removed.has(caseId)) return problem(410, "case-removed");
    const held = cases.get(caseId);
    if (held === undefined) return problem(404, "no-such-case");
    const entries = held
      .slice(after, after + limit)
      .map((entry, index) => ({ seq: after + index + 1, entry }));
    return reply(200, { version: held.length, entries });
  };

  return {
    cases,
    removed,
    restore(copy) {
      restored += 1;
      cases.clear();
      for (const [caseId, entries] of copy) cases.set(caseId, [...entries]);
    },
    answer({ method, path, body }) {
      if (path === "/api/v1/me") {
        const history = `database ${restored}`;
        return reply(200, { person: null, local: true, ownerNeeded: true, history });
      }
      const [, id, query] = /^\/api\/v1\/cases\/([^/]+)\/entries(\?.*)?$/.exec(path) ?? [];
      if (id === undefined) return problem(404, "no-such-route");
      const caseId = decodeURIComponent(id);
      // As over the wire: nothing is shared with the device.
      if (method === "POST") return take(caseId, structuredClone(body as { entries: Entry[] }).entries);
      const asked = new URLSearchParams(query);
      return structuredClone(give(caseId, Number(asked.get("after")), Number(asked.get("limit"))));
    },
  };
}

export function reply(status: number, json: unknown): Reply {
  return { is: "reply", status, json };
}

/** Problem details as RFC 9457 has them, as read from a reply. */
export function problem(status: number, code: string, detail?: string): Reply {
  return {
    is: "reply",
    status,
    json: { type: `/problems/${code}`, title: code, status },
    problem: { code, title: code, fields: [], ...(detail !== undefined && { detail }) },
  };
}
