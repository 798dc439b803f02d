import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { CornerwiseError } from "../errors.ts";
import type * as door from "../store/index.ts";

/** The door of the store; loaded only by the commands that need a database. */
type StoreDoor = typeof door;

/** How a command names its database; goes into its help. */
export const DATABASE_HELP = `  --database PLACE  path of a database file, or postgres://... ; left out, what the
                    environment names in CORNERWISE_DATABASE, else data/cornerwise.db`;

/** Errors  "not-found" when a package of the database is not installed. */
async function loadStore(): Promise<StoreDoor> {
  try {
    return await import("../store/index.ts");
  } catch (cause) {
    throw new CornerwiseError(
      "not-found",
      "the packages of the database are not there. Install them: npm install kysely libsql pg fflate",
      {},
      { cause },
    );
  }
}

/**
 * Does something with the database that a command names.
 *
 * Shape   place: the option's value; must: the file has to be there already.
 * Errors  "not-found": no such file; "not-readable": what the store tells, in its words.
 */
export async function withDatabase<T>(
  { place, cwd, must }: { readonly place: string | undefined; readonly cwd: string; readonly must: boolean },
  run: (store: door.Store, door: StoreDoor) => Promise<T>,
): Promise<T> {
  const loaded = await loadStore();
  const named = place ?? process.env.CORNERWISE_DATABASE ?? join("data", "cornerwise.db");
  const database = loaded.storeKind(named) === "postgres" ? named : resolve(cwd, named);
  if (must && loaded.storeKind(named) === "embedded" && !existsSync(database)) {
    throw new CornerwiseError("not-found", `there is no database ${database}. Name another with --database.`);
  }
  try {
    const store = await loaded.openStore({ database });
    try {
      return await run(store, loaded);
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof loaded.StoreProblem)) throw error;
    throw new CornerwiseError("not-readable", error.message, { code: error.code }, { cause: error });
  }
}
