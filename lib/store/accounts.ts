import type { Selectable, Transaction } from "kysely";
import { flagOf, momentText, NO_TOKENS } from "./account-columns.ts";
import { StoreProblem } from "./problem.ts";
import type { Store, StoreKind, Tables, UserTable } from "./tables.ts";

/** What the library of accounts calls signing in by e-mail address and password. */
const BY_PASSWORD = "credential";
/** Whoever makes the first account or changes who owns the workshop holds this setting's row meanwhile. */
const OWNERS_LOCK = "owners";

/** A person with an account. */
export interface Account {
  readonly id: string;
  readonly name: string;
  /** In small letters. */
  readonly email: string;
  readonly role: string;
  /** Cannot sign in any more. */
  readonly disabled: boolean;
  readonly madeAt: string;
  /** Counts its changes, from 1. */
  readonly version: number;
}

export interface NewAccount {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly passwordHash: string;
  /** ISO 8601, UTC. */
  readonly now: string;
}

export interface AccountChange {
  readonly name?: string;
  readonly role?: string;
  readonly disabled?: boolean;
  readonly passwordHash?: string;
}

type UserRow = Selectable<UserTable>;

function accountOf(row: UserRow): Account {
  const { id, name, email, role, disabled, createdAt, version } = row;
  return { id, name, email, role, disabled: Boolean(disabled), madeAt: momentText(createdAt), version };
}

/** Whether anybody has an account. */
export async function anyAccount(store: Store): Promise<boolean> {
  return (await store.db.selectFrom("user").select("id").limit(1).executeTakeFirst()) !== undefined;
}

/** Every account, by name. */
export async function listAccounts(store: Store): Promise<readonly Account[]> {
  const rows = await store.db.selectFrom("user").selectAll().orderBy("name").orderBy("id").execute();
  return rows.map(accountOf);
}

/** An account by its id; undefined when there is none. */
export async function accountById(store: Store, id: string): Promise<Account | undefined> {
  const row = await store.db.selectFrom("user").selectAll().where("id", "=", id).executeTakeFirst();
  return row && accountOf(row);
}

/** Ids of everybody who has one of these roles, or had it when disabled. */
export async function accountsOfRole(store: Store, role: string): Promise<readonly string[]> {
  const rows = await store.db.selectFrom("user").select("id").where("role", "=", role).execute();
  return rows.map(({ id }) => id);
}

/** Of two who change the owners at once, the second waits here until the first is through. */
async function lockOwners(trx: Transaction<Tables>): Promise<void> {
  await trx
    .insertInto("settings")
    .values({ key: OWNERS_LOCK, value: "" })
    .onConflict((conflict) => conflict.column("key").doUpdateSet({ value: "" }))
    .execute();
}

async function insertAccount(
  trx: Transaction<Tables>,
  kind: StoreKind,
  { id, name, email, role, passwordHash, now }: NewAccount,
): Promise<Account> {
  const row: UserRow = {
    id,
    name,
    email,
    emailVerified: flagOf(kind, false),
    image: null,
    role,
    disabled: flagOf(kind, false),
    createdAt: now,
    updatedAt: now,
    version: 1,
  };
  const made = await trx
    .insertInto("user")
    .values(row)
    .onConflict((conflict) => conflict.column("email").doNothing())
    .returning("id")
    .executeTakeFirst();
  if (made === undefined) {
    throw new StoreProblem(
      "email-taken",
      "Somebody has an account with this e-mail address. Change that account, or give another address.",
    );
  }
  await trx
    .insertInto("account")
    .values({
      id: `${id}-password`,
      userId: id,
      accountId: id,
      providerId: BY_PASSWORD,
      ...NO_TOKENS,
      password: passwordHash,
      createdAt: now,
      updatedAt: now,
    })
    .execute();
  return accountOf(row);
}

/**
 * Makes the first account of all; of two who try at once, one.
 *
 * Errors  StoreProblem owner-exists.
 */
export function makeFirstAccount(store: Store, account: NewAccount): Promise<Account> {
  return store.db.transaction().execute(async (trx) => {
    await lockOwners(trx);
    const there = await trx.selectFrom("user").select("id").limit(1).executeTakeFirst();
    if (there !== undefined) {
      throw new StoreProblem("owner-exists", "The workshop has accounts already. Ask its owner for one.");
    }
    return insertAccount(trx, store.kind, account);
  });
}

/** Errors  StoreProblem email-taken. */
export function makeAccount(store: Store, account: NewAccount): Promise<Account> {
  return store.db.transaction().execute((trx) => insertAccount(trx, store.kind, account));
}

/**
 * Changes an account that is at one of `versions`; left out, at any. Disabling it or giving it another password ends its sessions.
 *
 * Errors  StoreProblem no-such-account, changed-meanwhile, last-owner: somebody must be left who can change accounts.
 */
export function changeAccount(
  store: Store,
  id: string,
  versions: readonly number[] | undefined,
  change: AccountChange,
  now: string,
): Promise<Account> {
  return store.db.transaction().execute(async (trx) => {
    await lockOwners(trx);
    const row = await trx.selectFrom("user").selectAll().where("id", "=", id).executeTakeFirst();
    if (row === undefined) throw new StoreProblem("no-such-account", "There is no such account.");
    if (versions !== undefined && !versions.includes(row.version)) {
      throw new StoreProblem(
        "changed-meanwhile",
        "The account was changed meanwhile. Read it again, and change it from there.",
      );
    }
    const before = accountOf(row);
    const { passwordHash, ...fields } = change;
    const after: Account = { ...before, ...fields, version: before.version + 1 };
    if (isOwner(before) && !isOwner(after)) await refuseLastOwner(trx, id);
    await trx
      .updateTable("user")
      .set({
        name: after.name,
        role: after.role,
        disabled: flagOf(store.kind, after.disabled),
        updatedAt: now,
        version: after.version,
      })
      .where("id", "=", id)
      .execute();
    if (passwordHash !== undefined) {
      await trx
        .updateTable("account")
        .set({ password: passwordHash, updatedAt: now })
        .where("userId", "=", id)
        .where("providerId", "=", BY_PASSWORD)
        .execute();
    }
    if (after.disabled || passwordHash !== undefined) {
      await trx.deleteFrom("session").where("userId", "=", id).execute();
    }
    return after;
  });
}

const isOwner = ({ role, disabled }: Account): boolean => role === "owner" && !disabled;

async function refuseLastOwner(trx: Transaction<Tables>, id: string): Promise<void> {
  const others = await trx
    .selectFrom("user")
    .selectAll()
    .where("role", "=", "owner")
    .where("id", "!=", id)
    .execute();
  if (others.map(accountOf).some(isOwner)) return;
  throw new StoreProblem(
    "last-owner",
    "This is the last owner: nobody could change accounts any more. Make somebody else an owner first.",
  );
}
