import { StoreProblem, type StoreProblemCode } from "./problem.ts";

const ASK = "Look whether the server runs and whether CORNERWISE_DATABASE names it rightly.";

/** By the beginning of the code: SQLSTATE of PostgreSQL (its manual, appendix A), or of the operating system. */
const WORDS: readonly (readonly [RegExp, StoreProblemCode, string])[] = [
  [
    /^53100/,
    "disk-full",
    "The database server has no room left. Free some space on its disk; nothing of the last write was kept, and it can be sent again.",
  ],
  [
    /^25006/,
    "read-only",
    "The database server takes no writes: it is a copy for reading, or set to read only. Name the primary server in CORNERWISE_DATABASE.",
  ],
  [
    /^42501/,
    "read-only",
    "The database server does not let this user write. Make the user the owner of the database.",
  ],
  [
    /^53300/,
    "busy",
    "The database server has too many connections. Raise its max_connections, or run fewer instances.",
  ],
  [/^40(001|P01)|^55P03/, "busy", "Another write was in the way. Send it again."],
  [
    /^28/,
    "cannot-open",
    "The database server does not take this user or password. Look at CORNERWISE_DATABASE.",
  ],
  [
    /^3D000/,
    "cannot-open",
    "The database server has no database of that name. Make it with createdb, or name another in CORNERWISE_DATABASE.",
  ],
  [/^08|^57P0|^58/, "unreachable", `The database server broke off. ${ASK}`],
  [
    /^(ECONN|ENOTFOUND|EHOSTUNREACH|ENETUNREACH|ETIMEDOUT|EAI_AGAIN|EPIPE|ENOENT)/,
    "unreachable",
    `The database server does not answer. ${ASK}`,
  ],
];

/** Failures that the driver tells in words only. */
const WORDLESS =
  /Connection terminated|timeout expired|timeout exceeded when trying to connect|Client has encountered a connection error|not queryable/;

function codeOf(error: unknown): string {
  if (error instanceof AggregateError && error.errors.length > 0) return codeOf(error.errors[0]);
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
}

/** What the driver of PostgreSQL threw, as a StoreProblem when it is an expected failure. */
export function postgresProblem(error: unknown): unknown {
  if (error instanceof StoreProblem) return error;
  const code = codeOf(error);
  const found = WORDS.find(([pattern]) => pattern.test(code));
  if (found !== undefined) return new StoreProblem(found[1], found[2], { code }, { cause: error });
  if (error instanceof Error && WORDLESS.test(error.message)) {
    return new StoreProblem(
      "unreachable",
      `The database server does not answer. ${ASK}`,
      {},
      { cause: error },
    );
  }
  return error;
}
