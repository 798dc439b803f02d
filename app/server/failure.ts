import { StoreProblem, type StoreProblemCode } from "../../lib/store/index.ts";
import { ConfigProblem } from "./config.ts";
import { ApiProblem, type ProblemCode } from "./problem.ts";

/** What the store may say to whoever asks, in its own words. */
const TOLD: Partial<Record<StoreProblemCode, ProblemCode>> = {
  "no-such-case": "no-such-case",
  "case-removed": "case-removed",
  "case-full": "case-full",
  "entry-differs": "entry-differs",
  "bad-entry": "bad-input",
  "bad-cursor": "bad-input",
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

/** Where what is not told to the asker is written. */
function note(error: unknown): void {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`${new Date().toISOString()} ${text}\n`);
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
