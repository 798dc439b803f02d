import { randomUUID } from "node:crypto";
import { anyAccount, openStore, settingOnce, type Store } from "../../lib/store/index.ts";
import { type Auth, makeAuth } from "./auth.ts";
import { type Config, config } from "./config.ts";
import { Watch } from "./watch.ts";

/** What the routes of one process share. */
export interface Server {
  readonly config: Config;
  readonly store: Store;
  readonly auth: Auth;
  readonly watch: Watch;
  /** Whether anybody has an account; once true it stays so. */
  readonly hasAccounts: () => Promise<boolean>;
  /** Id of this very database: an archive is taken in by another one, with an id of its own. */
  readonly history: () => Promise<string>;
}

/** Every route is a bundle of its own: what they share lies on the one global object. */
const KEY = Symbol.for("cornerwise.server");
const shared = globalThis as { [KEY]?: Promise<Server> | undefined };

async function makeServer(): Promise<Server> {
  const settings = config();
  const store = await openStore({ database: settings.database });
  const auth = await makeAuth(store, settings);
  let known = false;
  const hasAccounts = async () => {
    known ||= await anyAccount(store);
    return known;
  };
  let id: Promise<string> | undefined;
  const history = () => {
    id ??= settingOnce(store, "history", randomUUID()).catch((error: unknown) => {
      id = undefined;
      throw error;
    });
    return id;
  };
  return { config: settings, store, auth, watch: new Watch(store), hasAccounts, history };
}

/**
 * The server of this process, opened when first asked for; after a failure the next one to ask tries again.
 *
 * Errors  ConfigProblem; StoreProblem as openStore.
 */
export function openServer(): Promise<Server> {
  shared[KEY] ??= makeServer().catch((error: unknown) => {
    shared[KEY] = undefined;
    throw error;
  });
  return shared[KEY];
}

/** Ends what the server holds; the next to ask opens it anew. */
export async function closeServer(): Promise<void> {
  const open = shared[KEY];
  shared[KEY] = undefined;
  const server = await open?.catch(() => undefined);
  server?.watch.end();
  await server?.store.close();
}
