import { createHash } from "node:crypto";
import { strFromU8, unzipSync } from "fflate";
import { z } from "zod";
import { describeIssue } from "../case/parse-entry.ts";
import {
  ACCOUNTS,
  ARCHIVE_FORMAT,
  ARCHIVE_LIMITS,
  ARCHIVE_SCHEMA_VERSION,
  ArchivedAccount,
  ArchivedAttempt,
  ArchivedCase,
  ArchivedExercise,
  ArchivedHandOut,
  ArchivedLink,
  ArchivedPhoto,
  ATTEMPTS,
  CASES,
  EXERCISES,
  HAND_OUTS,
  LINKS,
  MANIFEST,
  Manifest,
  PHOTOS,
} from "./archive-form.ts";
import { StoreProblem } from "./problem.ts";

/** An archive that cannot be taken in, in words. */
export function badArchive(what: string, cause?: unknown): StoreProblem {
  return new StoreProblem(
    "bad-archive",
    `The archive cannot be taken in: ${what}. Nothing of it was kept. Check that it was copied whole, or take another one.`,
    {},
    cause === undefined ? undefined : { cause },
  );
}

const withoutPrototype = (key: string, value: unknown): unknown => (key === "__proto__" ? undefined : value);

function parsed<T>(schema: z.ZodType<T>, text: string, where: string): T {
  let json: unknown;
  try {
    json = JSON.parse(text, withoutPrototype);
  } catch (cause) {
    throw badArchive(`${where} is not JSON`, cause);
  }
  const result = schema.safeParse(json);
  if (!result.success) throw badArchive(`${where}: ${describeIssue(result.error)}`);
  return result.data;
}

/** The names in the zip file, once its sizes were found bearable. */
function namesIn(bytes: Uint8Array): Set<string> {
  const names = new Set<string>();
  let unpacked = 0;
  unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      unpacked += originalSize;
      if (names.has(name)) throw badArchive(`it holds ${name} twice`);
      names.add(name);
      if (originalSize > ARCHIVE_LIMITS.file) throw badArchive(`${name} unpacks to ${originalSize} bytes`);
      if (names.size > ARCHIVE_LIMITS.files)
        throw badArchive(`it holds more than ${ARCHIVE_LIMITS.files} files`);
      if (unpacked > ARCHIVE_LIMITS.unpacked) {
        throw badArchive(`it unpacks to more than ${ARCHIVE_LIMITS.unpacked} bytes`);
      }
      return false;
    },
  });
  return names;
}

function unpack(bytes: Uint8Array, name: string): Uint8Array {
  // What is unpacked is never longer than the size that was looked at before.
  const file = unzipSync(bytes, { filter: (one) => one.name === name })[name];
  if (file === undefined) throw badArchive(`${name} is missing`);
  return file;
}

function manifestOf(bytes: Uint8Array): Manifest {
  const text = strFromU8(unpack(bytes, MANIFEST));
  const Head = z.object({ format: z.literal(ARCHIVE_FORMAT), schemaVersion: z.number() });
  const head = parsed(Head, text, MANIFEST);
  if (head.schemaVersion > ARCHIVE_SCHEMA_VERSION) {
    throw new StoreProblem(
      "bad-archive",
      `The archive has form ${head.schemaVersion}, this version reads form ${ARCHIVE_SCHEMA_VERSION}. Update the program, or take an older archive.`,
    );
  }
  return parsed(Manifest, text, MANIFEST);
}

/** An archive whose list of contents was read and found whole; each file is checked when it is asked for. */
export interface OpenArchive {
  readonly manifest: Manifest;
  readonly accounts: () => ArchivedAccount[];
  readonly links: () => ArchivedLink[];
  /** The files of cases, each with its cases. */
  readonly cases: () => Generator<readonly ArchivedCase[]>;
  /** The files of photos, each with its photos. */
  readonly photos: () => Generator<readonly ArchivedPhoto[]>;
  readonly exercises: () => Generator<readonly ArchivedExercise[]>;
  readonly handOuts: () => Generator<readonly ArchivedHandOut[]>;
  readonly attempts: () => Generator<readonly ArchivedAttempt[]>;
}

/**
 * Opens an archive.
 *
 * Range   ARCHIVE_LIMITS.
 * Errors  StoreProblem bad-archive, here and from each of its functions.
 */
export function openArchive(bytes: Uint8Array): OpenArchive {
  if (bytes.length > ARCHIVE_LIMITS.packed) throw badArchive(`it has ${bytes.length} bytes`);
  return guarded(() => {
    const names = namesIn(bytes);
    const manifest = manifestOf(bytes);
    const listed = new Map(manifest.files.map((file) => [file.name, file]));
    const stray = [...names].find((name) => name !== MANIFEST && !listed.has(name));
    if (stray !== undefined) throw badArchive(`its manifest does not list ${stray}`);
    const read = (name: string): string => {
      const file = guarded(() => unpack(bytes, name));
      const sha256 = createHash("sha256").update(file).digest("hex");
      if (sha256 !== listed.get(name)?.sha256) throw badArchive(`${name} is damaged`);
      return strFromU8(file);
    };
    function* linesOf<T>(folder: string, schema: z.ZodType<T>): Generator<readonly T[]> {
      for (const { name } of manifest.files.filter((file) => file.name.startsWith(folder))) {
        const lines = read(name).split("\n").filter(Boolean);
        yield lines.map((line, i) => parsed(schema, line, `${name}, line ${i + 1}`));
      }
    }
    return {
      manifest,
      accounts: () => parsed(z.array(ArchivedAccount), read(ACCOUNTS), ACCOUNTS),
      links: () => parsed(z.array(ArchivedLink), read(LINKS), LINKS),
      cases: () => linesOf(CASES, ArchivedCase),
      photos: () => linesOf(PHOTOS, ArchivedPhoto),
      exercises: () => linesOf(EXERCISES, ArchivedExercise),
      handOuts: () => linesOf(HAND_OUTS, ArchivedHandOut),
      attempts: () => linesOf(ATTEMPTS, ArchivedAttempt),
    };
  });
}

/**
 * Reads an archive from one end to the other, and gives what its manifest says.
 *
 * Errors  StoreProblem bad-archive.
 */
export function checkArchive(bytes: Uint8Array): Manifest {
  const archive = openArchive(bytes);
  archive.accounts();
  archive.links();
  for (const kind of ["cases", "photos", "exercises", "handOuts", "attempts"] as const) {
    let held = 0;
    for (const some of archive[kind]()) held += some.length;
    const said = archive.manifest[kind];
    if (held !== said) throw badArchive(`it holds ${held} ${kind}, not ${said}`);
  }
  return archive.manifest;
}

/** Whatever unpacking throws means that the file is no zip file, or is damaged. */
function guarded<T>(run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (error instanceof StoreProblem) throw error;
    throw badArchive("it is no zip file, or is damaged", error);
  }
}
