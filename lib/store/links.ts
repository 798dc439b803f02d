import type { LinksTable, Store } from "./tables.ts";
import { hashOfToken } from "./token-hash.ts";

/** What a link opens, and until when. */
export interface Link {
  readonly id: string;
  readonly kind: string;
  /** Id of the one thing that it opens. */
  readonly target: string;
  readonly madeBy: string | null;
  readonly madeAt: string;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
  /** For a form: what the workshop says to the customer, when it was opened first, when the customer was done. */
  readonly words: string | null;
  readonly openedAt: string | null;
  readonly doneAt: string | null;
}

/** A link to be made. */
export type NewLink = Omit<Link, "revokedAt" | "words" | "openedAt" | "doneAt"> & {
  readonly token: string;
  readonly words?: string | null;
};

function linkOf(row: LinksTable): Link {
  return {
    id: row.id,
    kind: row.kind,
    target: row.target,
    madeBy: row.made_by,
    madeAt: row.made_at,
    expiresAt: row.expires_at,
    revokedAt: row.revoked_at,
    words: row.words,
    openedAt: row.opened_at,
    doneAt: row.done_at,
  };
}

/**
 * Keeps a link. Of the token only its SHA-256 is kept, so that whoever reads the database cannot use it.
 *
 * Range   token: at least 128 bits of randomness, made by the caller, shown once.
 */
export async function makeLink(store: Store, link: NewLink): Promise<void> {
  await store.db
    .insertInto("links")
    .values({
      id: link.id,
      token_hash: hashOfToken(link.token),
      kind: link.kind,
      target: link.target,
      made_by: link.madeBy,
      made_at: link.madeAt,
      expires_at: link.expiresAt,
      revoked_at: null,
      words: link.words ?? null,
      opened_at: null,
      done_at: null,
    })
    .execute();
}

/** The link of a token; undefined when there is none, it has expired or was revoked: the three look alike. */
export async function openLink(store: Store, token: string, now: string): Promise<Link | undefined> {
  const row = await store.db
    .selectFrom("links")
    .selectAll()
    .where("token_hash", "=", hashOfToken(token))
    .where("expires_at", ">", now)
    .where("revoked_at", "is", null)
    .executeTakeFirst();
  return row && linkOf(row);
}

/** A link by its id, expired and revoked ones too. */
export async function linkById(store: Store, id: string): Promise<Link | undefined> {
  const row = await store.db.selectFrom("links").selectAll().where("id", "=", id).executeTakeFirst();
  return row && linkOf(row);
}

/** Makes a link useless from now on; returns whether it was of use until then. */
export async function revokeLink(store: Store, id: string, now: string): Promise<boolean> {
  const { numUpdatedRows } = await store.db
    .updateTable("links")
    .set({ revoked_at: now })
    .where("id", "=", id)
    .where("revoked_at", "is", null)
    .executeTakeFirst();
  return numUpdatedRows > 0n;
}

/** Notes that a form was opened, or done; the first time counts. */
export async function markLink(
  store: Store,
  id: string,
  what: "opened" | "done",
  now: string,
): Promise<void> {
  const column = what === "opened" ? "opened_at" : "done_at";
  await store.db
    .updateTable("links")
    .set({ [column]: now })
    .where("id", "=", id)
    .where(column, "is", null)
    .execute();
}

/** Every link to one thing, the newest first. */
export async function listLinks(store: Store, target: string): Promise<readonly Link[]> {
  const rows = await store.db
    .selectFrom("links")
    .selectAll()
    .where("target", "=", target)
    .orderBy("made_at", "desc")
    .orderBy("id")
    .execute();
  return rows.map(linkOf);
}
