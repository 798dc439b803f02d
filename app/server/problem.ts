/**
 * Every problem that a route answers with: its status and what it is called.
 *
 * Source  RFC 9110, 15 (statuses), RFC 6585 (428, 429), RFC 4918, 11.5 (507), RFC 6750, 3.1 (401 for a bad token).
 */
export const PROBLEMS = {
  "bad-json": [400, "The body is not JSON"],
  "sign-in-needed": [401, "Sign in first"],
  "wrong-sign-in": [401, "E-mail address or password is wrong"],
  "link-over": [401, "The link opens nothing"],
  forbidden: [403, "Not allowed"],
  "other-origin": [403, "The request comes from another site"],
  "wrong-set-up-code": [403, "The set-up code is wrong"],
  "no-such-case": [404, "There is no such case"],
  "no-such-photo": [404, "There is no such photo"],
  "no-such-account": [404, "There is no such account"],
  "no-such-link": [404, "There is no such link"],
  "no-such-exercise": [404, "There is no such exercise"],
  "no-such-hand-out": [404, "Nothing was handed out under this"],
  "no-such-attempt": [404, "There is no such attempt"],
  "entry-differs": [409, "An entry with this id says something else"],
  "owner-exists": [409, "There is an owner already"],
  "email-taken": [409, "The e-mail address has an account already"],
  "last-owner": [409, "The last owner must stay"],
  "not-empty": [409, "There are cases already"],
  "attempt-over": [409, "The attempt takes nothing more"],
  "attempt-open": [409, "The attempt has not ended"],
  "not-possible-here": [409, "It cannot be made with what is there"],
  "no-record-store": [409, "No record store is set"],
  "time-over": [409, "The time on the ramp is over"],
  "question-over": [409, "The question is not open any more"],
  "not-the-last": [409, "Something was said after it"],
  "case-removed": [410, "The case was removed"],
  "changed-meanwhile": [412, "It was changed meanwhile"],
  "photos-full": [413, "No more photos can be kept"],
  "too-large": [413, "The body is too large"],
  "case-full": [413, "The case is full"],
  "wrong-media-type": [415, "The body has the wrong media type"],
  "bad-input": [422, "The input does not follow its form"],
  "bad-photo": [422, "The photo cannot be taken"],
  "bad-archive": [422, "The archive cannot be taken in"],
  "version-needed": [428, "Say which version was changed"],
  "too-many-tries": [429, "Too many tries"],
  "server-fault": [500, "Something went wrong here"],
  "no-owner-yet": [503, "The workshop has no owner yet"],
  unreachable: [503, "The database does not answer"],
  "read-only": [503, "The database cannot be written"],
  "not-configured": [503, "A setting of the server is wrong"],
  busy: [503, "Too many are listening"],
  "disk-full": [507, "The disk is full"],
} as const satisfies Record<string, readonly [status: number, title: string]>;

export type ProblemCode = keyof typeof PROBLEMS;

/** One field that is wrong; `path` such as entries.0.text. */
export interface WrongField {
  readonly path: string;
  readonly message: string;
}

interface Details {
  readonly fields?: readonly WrongField[];
  readonly headers?: Readonly<Record<string, string>>;
}

/** Thrown by a handler: becomes the problem that the asker sees. `detail` says what is wrong and how to mend it. */
export class ApiProblem extends Error {
  override readonly name = "ApiProblem";
  readonly code: ProblemCode;
  readonly details: Details;

  constructor(code: ProblemCode, detail: string, details: Details = {}) {
    super(detail);
    this.code = code;
    this.details = details;
  }
}

export const PROBLEM_TYPE = "application/problem+json";

/** Where a problem's kind is named. */
export const problemUri = (code: ProblemCode): string => `/problems/${code}`;

/** What a sign-in needs to be asked for with: a 401 must carry a challenge (RFC 9110, 15.5.2). */
function challengeOf(code: ProblemCode): Record<string, string> {
  if (PROBLEMS[code][0] !== 401) return {};
  return {
    "www-authenticate":
      code === "link-over"
        ? 'Bearer realm="Cornerwise", error="invalid_token"'
        : 'Cookie realm="Cornerwise", form-action="/sign-in"',
  };
}

/**
 * The problem as an answer, in the members of RFC 9457: type, title, status, detail; for input also `fields`.
 */
export function problemResponse({ code, message, details }: ApiProblem): Response {
  const [status, title] = PROBLEMS[code];
  const { fields, headers } = details;
  return Response.json(
    { type: problemUri(code), title, status, detail: message, ...(fields !== undefined && { fields }) },
    { status, headers: { ...challengeOf(code), ...headers, "content-type": PROBLEM_TYPE } },
  );
}
