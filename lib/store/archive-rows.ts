import type { Kysely } from "kysely";
import { momentText } from "./account-columns.ts";
import type {
  ArchivedAccount,
  ArchivedAttempt,
  ArchivedCase,
  ArchivedExercise,
  ArchivedHandOut,
  ArchivedLink,
  ArchivedPhoto,
} from "./archive-form.ts";
import { entryFromText } from "./entry-text.ts";
import { bytesOf } from "./photos.ts";
import type { Tables } from "./tables.ts";

/** Cases that are read at a time: few enough that the largest fit into memory. */
const AT_ONCE = 20;

/** Rows a page at a time; `pageAfter` gives those behind an id, in the order of ids. */
async function* byId<Row extends { readonly id: string }>(
  pageAfter: (id: string) => Promise<Row[]>,
): AsyncGenerator<Row> {
  for (let after: string | undefined = ""; after !== undefined; ) {
    const rows: Row[] = await pageAfter(after);
    yield* rows;
    after = rows.at(-1)?.id;
  }
}

/** Every case with its entries, by id. */
export async function* archivedCases(db: Kysely<Tables>): AsyncGenerator<ArchivedCase> {
  let after = "";
  for (;;) {
    const heads = await db
      .selectFrom("cases")
      .select(["id", "owner_id", "opened_at", "changed_at", "removed_at", "version"])
      .where("id", ">", after)
      .orderBy("id")
      .limit(AT_ONCE)
      .execute();
    if (heads.length === 0) return;
    const rows = await db
      .selectFrom("entries")
      .select(["case_id", "body", "received_at", "account_id"])
      .where(
        "case_id",
        "in",
        heads.map(({ id }) => id),
      )
      .orderBy("case_id")
      .orderBy("seq")
      .execute();
    for (const head of heads) {
      after = head.id;
      yield {
        id: head.id,
        ownerId: head.owner_id,
        openedAt: head.opened_at,
        changedAt: head.changed_at,
        removedAt: head.removed_at,
        version: head.version,
        entries: rows
          .filter((row) => row.case_id === head.id)
          .map((row) => ({
            receivedAt: row.received_at,
            accountId: row.account_id,
            entry: entryFromText(row.body),
          })),
      };
    }
  }
}

/** Every person with the ways to sign in, by id. */
export async function archivedAccounts(db: Kysely<Tables>): Promise<ArchivedAccount[]> {
  const people = await db.selectFrom("user").selectAll().orderBy("id").execute();
  const ways = await db.selectFrom("account").selectAll().orderBy("id").execute();
  return people.map(({ emailVerified, disabled, createdAt, updatedAt, ...person }) => ({
    id: person.id,
    name: person.name,
    email: person.email,
    image: person.image,
    role: person.role,
    version: person.version,
    emailVerified: Boolean(emailVerified),
    disabled: Boolean(disabled),
    createdAt: momentText(createdAt),
    updatedAt: momentText(updatedAt),
    signIns: ways
      .filter(({ userId }) => userId === person.id)
      .map((way) => ({
        id: way.id,
        accountId: way.accountId,
        providerId: way.providerId,
        password: way.password,
        createdAt: momentText(way.createdAt),
        updatedAt: momentText(way.updatedAt),
      })),
  }));
}

/** Every link to something in the shop, by id; the codes for its first account belong to the server that printed them. */
export async function archivedLinks(db: Kysely<Tables>): Promise<ArchivedLink[]> {
  return db.selectFrom("links").selectAll().where("kind", "!=", "set-up").orderBy("id").execute();
}

/** Every photo, by case and id. */
export async function* archivedPhotos(db: Kysely<Tables>): AsyncGenerator<ArchivedPhoto> {
  let last = { case_id: "", id: "" };
  for (;;) {
    const { case_id, id } = last;
    const rows = await db
      .selectFrom("photos")
      .selectAll()
      .where((eb) => eb(eb.refTuple("case_id", "id"), ">", eb.tuple(case_id, id)))
      .orderBy("case_id")
      .orderBy("id")
      .limit(AT_ONCE)
      .execute();
    for (const row of rows) {
      last = row;
      yield {
        caseId: row.case_id,
        id: row.id,
        width: row.width,
        height: row.height,
        receivedAt: row.received_at,
        accountId: row.account_id,
        linkId: row.link_id,
        base64: Buffer.from(bytesOf(row.bytes)).toString("base64"),
      };
    }
    if (rows.length < AT_ONCE) return;
  }
}

/** Every exercise, removed ones too: attempts point to them. */
export async function* archivedExercises(db: Kysely<Tables>): AsyncGenerator<ArchivedExercise> {
  const all = db.selectFrom("exercises").selectAll().orderBy("id").limit(AT_ONCE);
  yield* byId((after) => all.where("id", ">", after).execute());
}

/** Everything that was handed out, by id. */
export async function* archivedHandOuts(db: Kysely<Tables>): AsyncGenerator<ArchivedHandOut> {
  const all = db.selectFrom("hand_outs").selectAll().orderBy("id").limit(AT_ONCE);
  yield* byId((after) => all.where("id", ">", after).execute());
}

/** Every attempt with its entries, by id. */
export async function* archivedAttempts(db: Kysely<Tables>): AsyncGenerator<ArchivedAttempt> {
  let after = "";
  for (;;) {
    const heads = await db
      .selectFrom("attempts")
      .selectAll()
      .where("id", ">", after)
      .orderBy("id")
      .limit(AT_ONCE)
      .execute();
    if (heads.length === 0) return;
    const rows = await db
      .selectFrom("attempt_entries")
      .select(["attempt_id", "body", "received_at"])
      .where(
        "attempt_id",
        "in",
        heads.map(({ id }) => id),
      )
      .orderBy("attempt_id")
      .orderBy("seq")
      .execute();
    for (const { version: _, ...head } of heads) {
      after = head.id;
      const entries = rows
        .filter((row) => row.attempt_id === head.id)
        .map((row) => ({ receivedAt: row.received_at, entry: entryFromText(row.body) }));
      yield { ...head, entries };
    }
  }
}
