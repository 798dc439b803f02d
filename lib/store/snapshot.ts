import { type ControlledTransaction, Kysely } from "kysely";
import { embeddedDialect } from "./embedded.ts";
import type { Store, Tables } from "./tables.ts";

/** The database as it is at one moment, however long it is read. */
export interface Snapshot {
  readonly db: ControlledTransaction<Tables>;
  readonly end: () => Promise<void>;
}

/** Holds the database as it is now, for reading, while others go on writing. */
export async function takeSnapshot(store: Store): Promise<Snapshot> {
  if (store.kind === "postgres") {
    const db = await store.db
      .startTransaction()
      .setIsolationLevel("repeatable read")
      .setAccessMode("read only")
      .execute();
    return {
      db,
      end: async () => {
        await db.rollback().execute();
      },
    };
  }
  // A connection of its own: the store has one, and whoever uses it meanwhile would wait.
  const own = new Kysely<Tables>({ dialect: embeddedDialect(store.database) });
  try {
    const db = await own.startTransaction().setAccessMode("read only").execute();
    return {
      db,
      end: async () => {
        await db.rollback().execute();
        await own.destroy();
      },
    };
  } catch (error) {
    await own.destroy();
    throw error;
  }
}
