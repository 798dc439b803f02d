import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { ReleaseName } from "./release-index.ts";

interface KnowledgeDatabase extends DBSchema {
  /** A release's text never changes: it is put once. */
  releases: {
    key: string;
    value: ReleaseName & { readonly text: string };
    indexes: { "by-version": string };
  };
}

let opening: Promise<IDBPDatabase<KnowledgeDatabase>> | undefined;

/** Apart from the cases: a release is nobody's own, whoever is signed in. */
function database(): Promise<IDBPDatabase<KnowledgeDatabase>> {
  opening ??= openDB<KnowledgeDatabase>("cornerwise-knowledge", 1, {
    upgrade(db) {
      db.createObjectStore("releases", { keyPath: "sha256" }).createIndex("by-version", "version");
    },
    terminated() {
      opening = undefined;
    },
  }).catch((error: unknown) => {
    opening = undefined;
    throw error;
  });
  return opening;
}

/** The text of a release that this device keeps; undefined when it does not. */
export async function keptText(sha256: string): Promise<string | undefined> {
  return (await (await database()).get("releases", sha256))?.text;
}

/** Keeps a release on this device. */
export async function keepRelease({ version, sha256 }: ReleaseName, text: string): Promise<void> {
  await (await database()).put("releases", { version, sha256, text });
}

/** What this device keeps, without the texts. */
export async function keptReleases(): Promise<ReleaseName[]> {
  const names: ReleaseName[] = [];
  const index = (await database()).transaction("releases").store.index("by-version");
  for (let at = await index.openKeyCursor(); at !== null; at = await at.continue()) {
    names.push({ version: at.key, sha256: at.primaryKey });
  }
  return names;
}
