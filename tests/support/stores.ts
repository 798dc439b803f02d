import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { afterAll, beforeAll, describe } from "vitest";
import { openStore, type Store, type StoreKind } from "../../lib/store/index.ts";

/** Makes empty databases of one kind, and clears them away after the tests of the block. */
export interface Databases {
  readonly kind: StoreKind;
  /** Path or address of a database that nobody has used yet. */
  readonly fresh: () => Promise<string>;
  /** An empty open store. */
  readonly open: () => Promise<Store>;
  /** A store on a database that may be in use, as another instance of the app has it. */
  readonly reopen: (database: string) => Promise<Store>;
}

interface Place {
  readonly fresh: () => Promise<string>;
  readonly clear: () => Promise<void>;
}

/** Files in a folder of their own below the system's temporary one. */
function embeddedPlace(): Place {
  const folder = mkdtempSync(join(tmpdir(), "cornerwise-store-"));
  let made = 0;
  return {
    fresh: () => Promise.resolve(join(folder, `${++made}`, "shop.db")),
    clear: () => {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  };
}

/** Databases of the server that runs for the tests. */
function postgresPlace(server: string): Place {
  const admin = new pg.Client({ connectionString: server });
  let connected: Promise<unknown> | undefined;
  return {
    async fresh() {
      await (connected ??= admin.connect());
      // Test files run side by side on one server.
      const name = `shop_${process.pid}_${Math.random().toString(36).slice(2)}`;
      await admin.query(`create database ${name}`);
      return Object.assign(new URL(server), { pathname: `/${name}` }).href;
    },
    async clear() {
      // The databases go with the server, when all tests are through.
      if (connected !== undefined) await admin.end();
    },
  };
}

const PLACES: readonly { readonly kind: StoreKind; readonly place: () => Place }[] = [
  { kind: "embedded", place: embeddedPlace },
  ...(process.env.TEST_POSTGRES === undefined
    ? []
    : [{ kind: "postgres" as const, place: () => postgresPlace(process.env.TEST_POSTGRES ?? "") }]),
];

/** Kinds of database that are there: without a PostgreSQL server on this machine, the embedded one alone. */
export const STORE_KINDS: readonly StoreKind[] = PLACES.map(({ kind }) => kind);

/** Databases of one kind for one block of tests. Call it where hooks may be set. */
export function databasesOf(kind: StoreKind): Databases {
  const stores: Store[] = [];
  let place: Place | undefined;
  const used = (): Place => {
    if (place === undefined)
      throw new Error("Ask for databases in a test or a hook, not while tests are listed.");
    return place;
  };
  const reopen = async (database: string): Promise<Store> => {
    const store = await openStore({ database });
    stores.push(store);
    return store;
  };
  beforeAll(() => {
    place = PLACES.find((one) => one.kind === kind)?.place();
  });
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    await place?.clear();
  });
  const fresh = (): Promise<string> => used().fresh();
  return { kind, fresh, reopen, open: async () => reopen(await fresh()) };
}

/** Runs a block of tests on each kind of database that is there. */
export function forEachStore(name: string, block: (databases: Databases) => void): void {
  for (const kind of STORE_KINDS) {
    describe(`${name}, ${kind}`, () => {
      block(databasesOf(kind));
    });
  }
}
