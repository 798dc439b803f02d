import type { Principal, Role } from "./principal.ts";

/** Whose case it is, seen from the asker: nobody's belongs to the workshop. */
export type Whose = "own" | "trainee's" | "other's";

/** What an asker may do an action with: every case, own ones and those of trainees, own ones, none. */
type Reach = "all" | "own and trainees'" | "own" | "none";

type Asker = "local" | Role;

const CASES: Record<Asker, Reach> = {
  local: "all",
  owner: "all",
  advisor: "all",
  technician: "all",
  instructor: "own and trainees'",
  trainee: "own",
};

const OWNER: Record<Asker, Reach> = {
  local: "all",
  owner: "all",
  advisor: "none",
  technician: "none",
  instructor: "none",
  trainee: "none",
};

const EXERCISES: Record<Asker, Reach> = { ...OWNER, instructor: "own" };

const ACCOUNTS: Record<Asker, Reach> = {
  local: "none",
  owner: "all",
  advisor: "all",
  technician: "all",
  instructor: "all",
  trainee: "all",
};

/**
 * Who may do what. "open" is for everybody, signed in or not.
 *
 * A case that its asker may not read is hidden; one that may be read but not treated so is forbidden.
 */
export const ACCESS = {
  "see-status": "open",
  "make-first-account": "open",
  "sign-in": "open",
  "sign-out": "open",
  "read-shared": "open",
  "answer-form": "open",
  "keep-own-account": ACCOUNTS,
  "keep-accounts": { ...OWNER, local: "none" },
  // Whoever learns has no say in who takes which case.
  "see-people": { ...ACCOUNTS, local: "all", trainee: "none" },
  "read-cases": CASES,
  "add-entries": CASES,
  // An outsider sees what a link opens: that is for the workshop to decide, not for somebody who learns.
  "share-case": { ...CASES, trainee: "none" },
  "remove-case": OWNER,
  "keep-archive": OWNER,
  "keep-exercises": EXERCISES,
  "see-board": EXERCISES,
  // A code or a link is enough: whose attempt it is, the handler looks up by account or by the browser's token.
  "work-exercise": "open",
} as const satisfies Record<string, "open" | Record<Asker, Reach>>;

export type Action = keyof typeof ACCESS;

export type Verdict = "allowed" | "hidden" | "forbidden" | "sign-in-needed";

const REACHES: Record<Reach, readonly Whose[]> = {
  all: ["own", "trainee's", "other's"],
  "own and trainees'": ["own", "trainee's"],
  own: ["own"],
  none: [],
};

/** How far an action of this asker reaches; "none" also for those who have to sign in first. */
export function reachOf(action: Action, principal: Principal): Reach {
  const right = ACCESS[action];
  if (right === "open") return "all";
  if (principal.is === "local") return right.local;
  return principal.is === "account" ? right[principal.role] : "none";
}

/** Whether the asker may do this; for what is done to a case, whose case it is. */
export function verdictOn(action: Action, principal: Principal, whose?: Whose): Verdict {
  if (ACCESS[action] === "open") return "allowed";
  if (principal.is === "nobody" || principal.is === "link") return "sign-in-needed";
  const reach = reachOf(action, principal);
  if (whose === undefined) return reach === "none" ? "forbidden" : "allowed";
  if (!REACHES[reachOf("read-cases", principal)].includes(whose)) return "hidden";
  return REACHES[reach].includes(whose) ? "allowed" : "forbidden";
}
