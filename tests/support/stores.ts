import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe } from "vitest";
import { openStore, type Store, type StoreKind } from "../../lib/store/index.ts";

/** Makes empty databases of one kind, and clears them away after the tests of the block. */
export interface Databases {
  readonly kind: StoreKind;
  /** Path or address of a database that nobody has used yet. */
  readonly fresh: () => Promise<string>;
  /** An empty open store. */
  readonly open: () => Promise<Store>;
  /** The same database once more, as another instance of the app has it. */
  readonly reopen: (database: string) => Promise<Store>;
}

/** Files in a folder of their own below the system's temporary one. */
function embeddedPlace(): { fresh: () => Promise<string>; clear: () => Promise<void> } {
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

/** Runs a block of tests on each kind of database that is there. */
export function forEachStore(name: string, block: (databases: Databases) => void): void {
  describe(`${name}, embedded`, () => {
    const { fresh, clear } = embeddedPlace();
    block(tracked("embedded", fresh, clear));
  });
}

function tracked(kind: StoreKind, fresh: () => Promise<string>, clear: () => Promise<void>): Databases {
  const stores: Store[] = [];
  const reopen = async (database: string): Promise<Store> => {
    const store = await openStore({ database });
    stores.push(store);
    return store;
  };
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    await clear();
  });
  return { kind, fresh, reopen, open: async () => reopen(await fresh()) };
}
