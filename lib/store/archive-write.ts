import { createHash } from "node:crypto";
import { setImmediate as turn } from "node:timers/promises";
import { Zip, ZipDeflate } from "fflate";
import {
  ACCOUNTS,
  ARCHIVE_FORMAT,
  ARCHIVE_SCHEMA_VERSION,
  ATTEMPTS,
  CASES,
  EXERCISES,
  HAND_OUTS,
  LINKS,
  MANIFEST,
  type Manifest,
  PHOTOS,
} from "./archive-form.ts";
import {
  archivedAccounts,
  archivedAttempts,
  archivedCases,
  archivedExercises,
  archivedHandOuts,
  archivedLinks,
  archivedPhotos,
} from "./archive-rows.ts";
import { takeSnapshot } from "./snapshot.ts";
import type { Store } from "./tables.ts";

/** Characters of lines in one file. */
const FILE_SIZE = 4_000_000;

/** A zip file that is taken away piece by piece while it is made. */
class Packing {
  readonly files: Manifest["files"] = [];
  readonly #zip: Zip;
  readonly #time: string;
  #ready: Uint8Array[] = [];
  #failure: Error | null = null;

  constructor(time: string) {
    this.#time = time;
    this.#zip = new Zip((error, piece) => {
      this.#failure ??= error;
      this.#ready.push(piece);
    });
  }

  add(name: string, text: string): void {
    const bytes = new TextEncoder().encode(text);
    if (name !== MANIFEST) {
      const sha256 = createHash("sha256").update(bytes).digest("hex");
      this.files.push({ name, bytes: bytes.length, sha256 });
    }
    const file = new ZipDeflate(name, { level: 6 });
    file.mtime = this.#time;
    this.#zip.add(file);
    file.push(bytes, true);
  }

  end(): void {
    this.#zip.end();
  }

  /** What has been packed since it was last asked. */
  take(): Uint8Array[] {
    if (this.#failure !== null) throw this.#failure;
    const ready = this.#ready;
    this.#ready = [];
    return ready;
  }
}

/**
 * The whole shop as one zip file, as it is at this moment: every case, the accounts with the hashes of their passwords,
 * the links, the photos, the exercises with their attempts. Left out are sessions, settings and counts of tries.
 *
 * Shape   pieces of the file, in order; others go on writing meanwhile. now: ISO 8601, UTC.
 * Errors  StoreProblem unreachable, busy, cannot-open.
 */
export async function* writeArchive(store: Store, now: string): AsyncGenerator<Uint8Array> {
  const snapshot = await takeSnapshot(store);
  try {
    const packing = new Packing(now);
    const { db } = snapshot;
    let entries = 0;
    const cases = yield* packLines(packing, CASES, archivedCases(db), (one) => {
      entries += one.entries.length;
    });
    const photos = yield* packLines(packing, PHOTOS, archivedPhotos(db));
    const exercises = yield* packLines(packing, EXERCISES, archivedExercises(db));
    const handOuts = yield* packLines(packing, HAND_OUTS, archivedHandOuts(db));
    const attempts = yield* packLines(packing, ATTEMPTS, archivedAttempts(db));
    const accounts = await archivedAccounts(db);
    const links = await archivedLinks(db);
    packing.add(ACCOUNTS, JSON.stringify(accounts));
    packing.add(LINKS, JSON.stringify(links));
    const manifest: Manifest = {
      format: ARCHIVE_FORMAT,
      schemaVersion: ARCHIVE_SCHEMA_VERSION,
      madeAt: now,
      cases,
      entries,
      accounts: accounts.length,
      links: links.length,
      photos,
      exercises,
      handOuts,
      attempts,
      files: packing.files,
    };
    packing.add(MANIFEST, `${JSON.stringify(manifest, null, 2)}\n`);
    packing.end();
    yield* packing.take();
  } finally {
    await snapshot.end();
  }
}

/** Records as lines of files of a few megabytes in a folder; gives how many. */
async function* packLines<T>(
  packing: Packing,
  folder: string,
  records: AsyncIterable<T>,
  look: (record: T) => void = () => undefined,
): AsyncGenerator<Uint8Array, number> {
  let count = 0;
  let files = 0;
  let lines: string[] = [];
  let size = 0;
  const pack = (): void => {
    packing.add(`${folder}${String(++files).padStart(5, "0")}.jsonl`, lines.join(""));
    lines = [];
    size = 0;
  };
  for await (const record of records) {
    look(record);
    const line = `${JSON.stringify(record)}\n`;
    count += 1;
    lines.push(line);
    size += line.length;
    if (size < FILE_SIZE) continue;
    pack();
    yield* packing.take();
    // Packing takes long; whoever else waits for this process goes first.
    await turn();
  }
  if (lines.length > 0) pack();
  return count;
}
