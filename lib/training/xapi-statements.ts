import type { KeptResult } from "./kept-result.ts";
import { type Statement, XAPI_VERSION } from "./xapi-statement.ts";

/** An attempt as statements are made of it. */
export interface ToldAttempt {
  readonly id: string;
  readonly exercise: { readonly id: string; readonly name: string };
  readonly course: string | null;
  /** `id` of an account, or null for somebody who typed a name. With an account its name stays here. */
  readonly trainee: { readonly id: string | null; readonly name: string };
  readonly startedAt: string;
  readonly endedAt: string | null;
  readonly result: KeptResult | undefined;
}

/** What statements are made with. */
export interface StatementTools {
  /** Origin of this server, such as https://desk.example: exercises and people are named below it. */
  readonly site: string;
  /** A UUID that follows from a text alone: what is sent again makes no second statement. */
  readonly uuidOf: (text: string) => string;
}

/* Words of the ADL vocabulary (https://w3id.org/xapi/adl), which record stores know. */
const VERBS = {
  attempted: "http://adlnet.gov/expapi/verbs/attempted",
  answered: "http://adlnet.gov/expapi/verbs/answered",
  completed: "http://adlnet.gov/expapi/verbs/completed",
} as const;
const ACTIVITIES = "http://adlnet.gov/expapi/activities/";

type Kind = keyof typeof VERBS;

/**
 * The statements of one attempt: that it was begun and, once it has ended, what the verdict was and how it went.
 *
 * The score is 1 - Brier score (Brier 1950), 0..1: sure and right gives 1, sure and wrong 0. Success: a part behind the
 * complaint was named at its place. What else the board shows stands in extensions below the site.
 */
export function statementsOf(attempt: ToldAttempt, tools: StatementTools): Statement[] {
  const { result, endedAt } = attempt;
  const begun = statement("attempted", attempt, tools, attempt.startedAt);
  if (result === undefined || endedAt === null) return [begun];
  const exercise = exerciseActivity(attempt, tools);
  const answered: Statement = {
    ...statement("answered", attempt, tools, endedAt),
    object: verdictActivity(attempt, tools),
    result: answeredResult(result, tools),
  };
  const completed = statement("completed", attempt, tools, endedAt);
  return [
    begun,
    {
      ...answered,
      context: {
        ...answered.context,
        contextActivities: { ...answered.context.contextActivities, parent: [exercise] },
      },
    },
    { ...completed, result: completedResult(result, attempt, tools) },
  ];
}

function statement(kind: Kind, attempt: ToldAttempt, tools: StatementTools, timestamp: string): Statement {
  const { course } = attempt;
  return {
    id: tools.uuidOf(`${attempt.id} ${kind}`),
    actor: { objectType: "Agent", account: accountOf(attempt, tools) },
    verb: { id: VERBS[kind], display: { en: kind } },
    object: exerciseActivity(attempt, tools),
    context: {
      registration: tools.uuidOf(`${attempt.id} registration`),
      ...(course !== null && { contextActivities: { grouping: [courseActivity(course, tools)] } }),
      platform: "Cornerwise",
      language: "en",
    },
    timestamp,
    version: XAPI_VERSION,
  };
}

/** A typed name has a home page of its own, so that it is never taken for an account's id. */
function accountOf({ trainee: { id, name } }: ToldAttempt, { site }: StatementTools) {
  return id === null ? { homePage: `${site}/exercise`, name } : { homePage: site, name: id };
}

type Activity = Statement["object"];

function exerciseActivity({ exercise }: ToldAttempt, { site }: StatementTools): Activity {
  return {
    objectType: "Activity",
    id: `${site}/activities/exercises/${encodeURIComponent(exercise.id)}`,
    definition: { name: { en: exercise.name }, type: `${ACTIVITIES}simulation` },
  };
}

function verdictActivity(attempt: ToldAttempt, tools: StatementTools): Activity {
  return {
    objectType: "Activity",
    id: `${exerciseActivity(attempt, tools).id}/verdict`,
    definition: {
      name: { en: `Verdict: ${attempt.exercise.name}` },
      description: { en: "Which worn, loose or bent part causes the complaint?" },
      type: `${ACTIVITIES}cmi.interaction`,
      interactionType: "other",
    },
  };
}

function courseActivity(course: string, { site }: StatementTools): Activity {
  return {
    objectType: "Activity",
    id: `${site}/activities/courses/${encodeURIComponent(course)}`,
    definition: { name: { en: course }, type: `${ACTIVITIES}course` },
  };
}

type Result = NonNullable<Statement["result"]>;

function answeredResult({ score, verdict }: KeptResult, tools: StatementTools): Result {
  return {
    ...succeeded(score.right),
    ...(verdict !== undefined && {
      // Several answers are set apart as in the choice interactions of the standard.
      response: verdict.suspects.join("[,]"),
      extensions: extensions({ confidence: verdict.confidence }, tools),
    }),
  };
}

function completedResult(result: KeptResult, attempt: ToldAttempt, tools: StatementTools): Result {
  const { score } = result;
  const { brier } = score;
  const points = brier === undefined ? undefined : 1 - brier;
  return {
    completion: true,
    ...succeeded(score.right),
    ...(points !== undefined && { score: { scaled: points, raw: points, min: 0, max: 1 } }),
    duration: durationOf(attempt.startedAt, attempt.endedAt ?? attempt.startedAt),
    extensions: extensions(
      {
        "ramp-minutes": score.minutes,
        "best-minutes": score.bestMinutes,
        "minutes-lost": score.lostMinutes,
        "minutes-after-proof": score.afterProof,
        "wrong-parts": score.wrongParts.length,
        "unsafe-checks": score.unsafe.length,
        "cautions-skipped": score.cautionsSkipped.length,
        "jumped-to-the-verdict": score.jumped,
      },
      tools,
    ),
  };
}

const succeeded = (right: boolean | undefined): Pick<Result, "success"> =>
  right === undefined ? {} : { success: right };

function extensions(values: Readonly<Record<string, number | boolean>>, { site }: StatementTools) {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [`${site}/terms/${name}`, value]));
}

/** Time between two moments, ISO 8601, to a hundredth of a second as the standard compares it; none when the clock ran back. */
function durationOf(from: string, to: string): string {
  const seconds = Math.max(0, Date.parse(to) - Date.parse(from)) / 1000;
  return `PT${Math.round(seconds * 100) / 100}S`;
}
