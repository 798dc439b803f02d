import { StoreProblem, type StoreProblemCode } from "./problem.ts";

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";

type Words = readonly [StoreProblemCode, (path: string) => string];

/** By the beginning of the code of the database or the operating system. */
const WORDS: readonly (readonly [string, Words])[] = [
  [
    "SQLITE_FULL",
    [
      "disk-full",
      (path) =>
        `There is no room left for the database ${path}. Free some space on that disk; nothing of the last write was kept, and it can be sent again.`,
    ],
  ],
  [
    "ENOSPC",
    [
      "disk-full",
      (path) =>
        `There is no room left for the database ${path}. Free some space on that disk and start again.`,
    ],
  ],
  [
    "SQLITE_READONLY",
    [
      "read-only",
      (path) =>
        `The database ${path} may only be read. Give the user that runs the server the right to write the file and its folder.`,
    ],
  ],
  [
    "EACCES",
    [
      "read-only",
      (path) =>
        `The database ${path} may only be read. Give the user that runs the server the right to write the file and its folder, or name another place in CORNERWISE_DATABASE.`,
    ],
  ],
  [
    "EROFS",
    [
      "read-only",
      (path) =>
        `The database ${path} is on a disk that may only be read. Mount it for writing, or name another place in CORNERWISE_DATABASE.`,
    ],
  ],
  [
    "SQLITE_NOTADB",
    [
      "not-a-database",
      (path) =>
        `The file ${path} is no database of ours. Name another one in CORNERWISE_DATABASE, or move the file away.`,
    ],
  ],
  [
    "SQLITE_CORRUPT",
    [
      "not-a-database",
      (path) =>
        `The database ${path} is damaged. Stop the server, keep a copy of the file, and restore the last backup.`,
    ],
  ],
  [
    "SQLITE_BUSY",
    [
      "busy",
      (path) =>
        `Another program holds the database ${path}. Try again; close whatever else has the file open.`,
    ],
  ],
  [
    "SQLITE_IOERR",
    [
      "disk-full",
      (path) =>
        `The disk of the database ${path} did not take the write. Look whether it is full or failing; nothing of the last write was kept.`,
    ],
  ],
  [
    "SQLITE_CANTOPEN",
    [
      "cannot-open",
      (path) => `The database ${path} cannot be opened. Look whether its folder is there and may be written.`,
    ],
  ],
  [
    "ENOTDIR",
    [
      "cannot-open",
      (path) =>
        `A part of the path ${path} is a file, not a folder. Name another place in CORNERWISE_DATABASE.`,
    ],
  ],
  [
    "EEXIST",
    [
      "cannot-open",
      (path) =>
        `A part of the path ${path} is a file, not a folder. Name another place in CORNERWISE_DATABASE.`,
    ],
  ],
];

/** What the embedded database or its disk threw, as a StoreProblem when it is an expected failure. */
export function embeddedProblem(error: unknown, path: string): unknown {
  if (error instanceof StoreProblem) return error;
  const code = codeOf(error);
  const found = WORDS.find(([start]) => code.startsWith(start));
  // Opening fails without a code; its message ends in SQLite's number 14, "cannot open".
  const words = found?.[1] ?? (/ConnectionFailed/.test(String(error)) ? CANNOT_OPEN : undefined);
  if (words === undefined) return error;
  return new StoreProblem(words[0], words[1](path), { path }, { cause: error });
}

const CANNOT_OPEN: Words = [
  "cannot-open",
  (path) =>
    `The database ${path} cannot be opened. Look whether it is a file, its folder is there, and both may be written.`,
];
