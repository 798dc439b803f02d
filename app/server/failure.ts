import { StoreProblem, type StoreProblemCode } from "../../lib/store/index.ts";
import { ConfigProblem } from "./config.ts";
import { ApiProblem, type ProblemCode } from "./problem.ts";

/** What the store may say to whoever asks, in its own words. */
const TOLD: Partial<Record<StoreProblemCode, ProblemCode>> = {
  "no-such-case": "no-such-case",
  "case-removed": "case-removed",
  "case-full": "case-full",
  "photos-full": "photos-full",
  "no-such-exercise": "no-such-exercise",
  "no-such-attempt": "no-such-attempt",
  "attempt-over": "attempt-over",
  "entry-differs": "entry-differs",
  "bad-entry": "bad-input",
  "bad-cursor": "bad-input",
  "bad-archive": "bad-archive",
  "not-empty": "not-empty",
  "no-such-account": "no-such-account",
  "owner-exists": "owner-exists",
  "email-taken": "email-taken",
  "last-owner": "last-owner",
  "changed-meanwhile": "changed-meanwhile",
};

/** The rest speaks of paths and addresses of this machine: those are for whoever runs it. */
const KEPT_BACK: Partial<Record<StoreProblemCode, readonly [ProblemCode, string]>> = {
  "disk-full": ["disk-full", "The server has no room left. Nothing was changed; make room on its disk."],
  "read-only": ["read-only", "The server may not write its database. Nothing was changed; see its console."],
};

const UNREACHABLE = "The server's database does not answer. Nothing was changed; try again soon.";

/** A database that is away fails every request: its line need not fill the console. */
const QUIET_MS = 10_000;
let last = { text: "", at: 0 };

/** An expected failure in one line with what lies behind it, anything else with where it happened. */
function consoleText(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (!(error instanceof StoreProblem || error instanceof ConfigProblem)) return error.stack ?? error.message;
  return error.cause instanceof Error ? `${error.message} (${error.cause.message})` : error.message;
}

/** Writes what is not told to the asker. */
function note(error: unknown): void {
  const text = consoleText(error);
  const at = Date.now();
  if (text === last.text && at - last.at < QUIET_MS) return;
  last = { text, at };
  process.stderr.write(`${new Date(at).toISOString()} ${text}\n`);
}

/** What an error is to whoever asked: nothing of it says how the server is made or where it lies. */
export function problemOf(error: unknown): ApiProblem {
  if (error instanceof ApiProblem) return error;
  if (error instanceof StoreProblem) {
    const told = TOLD[error.code];
    if (told !== undefined) return new ApiProblem(told, error.message);
    note(error);
    const [code, detail] = KEPT_BACK[error.code] ?? ["unreachable", UNREACHABLE];
    return new ApiProblem(code, detail, { headers: { "retry-after": "5" } });
  }
  note(error);
  if (error instanceof ConfigProblem) {
    return new ApiProblem("not-configured", "A setting of the server cannot be used; see its console.");
  }
  return new ApiProblem(
    "server-fault",
    "The fault is here, not in what was sent. Nothing was changed by halves; try again, and see the server's console.",
  );
}
