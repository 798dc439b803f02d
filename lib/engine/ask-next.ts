import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Answer, AnswerState } from "./answers.ts";
import { parseFinding } from "./finding-id.ts";
import type { Grounded } from "./ground.ts";
import { proposeChecks } from "./propose.ts";
import type { Weighing } from "./weigh.ts";

/** What is recorded when a choice is taken: findings as told, to be entered as reports. */
export interface LayAnswer {
  readonly finding: string;
  readonly state: AnswerState;
  readonly level?: string | undefined;
}

/** One answer that can be given to a question, in plain words. */
export interface LayChoice {
  readonly label: string;
  readonly answers: readonly LayAnswer[];
}

/** Something that an owner or driver can answer or look at, worded for somebody who knows nothing of cars. */
export interface LayQuestion {
  /** `ask:finding`, or `ask:complaint` for what is wrong at all. */
  readonly id: string;
  /** A question is answered from memory; a try is a look or a touch at the standing car. */
  readonly kind: "question" | "try";
  readonly question: string;
  readonly help?: string | undefined;
  /** What it is like in daily life: "like two spoons knocked together". */
  readonly example?: string | undefined;
  /** Id of a drawing of the knowledge. */
  readonly picture?: string | undefined;
  /** What to do, for a try; empty for a question. */
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  /** The last one is always "Don't know". */
  readonly choices: readonly LayChoice[];
}

export interface AskNextOptions {
  /** Most questions given. */
  readonly most: number;
  /** Who answers: the driver can say what is noticed at the wheel. */
  readonly who: "owner" | "driver";
  /** Ids of questions, or findings, that are not to be asked (again). */
  readonly notAgain?: readonly string[] | undefined;
}

const YES = "Yes";
const NO = "No";
const DO_NOT_KNOW = "Don't know";

/**
 * The most telling questions for somebody who knows nothing of cars, best first: expected information about what explains
 * the complaint per minute, as for any check.
 *
 * Nothing drives or raises the car, needs a tool or goes underneath. What was answered, "unknown" included, is not asked
 * again. While nobody complains of anything, the one question is what is wrong. Empty when there is nothing left to learn.
 */
export function askNext(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: AskNextOptions,
): LayQuestion[] {
  const left = new Set(options.notAgain);
  const wanted = (id: string, finding: string): boolean => !left.has(id) && !left.has(finding);
  if (weighing.explanation === undefined) {
    const first = whatIsWrong(grounded.knowledge, answers, left);
    return first === undefined ? [] : [first].slice(0, options.most);
  }
  return proposeChecks(grounded, answers, weighing, { who: options.who, only: "questions" })
    .flatMap(({ id, name, settles: [settled] }): LayQuestion[] =>
      settled === undefined || !wanted(id, settled.finding)
        ? []
        : [yesOrNo(id, settled.finding, inContext(grounded.knowledge, weighing, settled.finding, name))],
    )
    .slice(0, options.most);
}

/** Id of the question that comes first of all. */
const FIRST = "ask:complaint";

/** What is wrong at all, as long as nothing is told; undefined once every complaint was asked for. */
function whatIsWrong(
  knowledge: Knowledge,
  answers: readonly Answer[],
  left: ReadonlySet<string>,
): LayQuestion | undefined {
  const asked = new Set(answers.map((a) => a.finding));
  // What comes often also comes often without a cause of this knowledge: the common complaints stand first.
  const open = knowledge.complaints
    .filter((c) => !asked.has(c.id) && !left.has(c.id))
    .sort((a, b) => b.leak - a.leak || (a.id < b.id ? -1 : 1));
  if (open.length === 0 || left.has(FIRST)) return undefined;
  return {
    id: FIRST,
    kind: "question",
    question: "What is wrong with the car?",
    steps: [],
    cautions: [],
    choices: [
      ...open.map((c) => ({ label: c.name, answers: [{ finding: c.id, state: "present" as const }] })),
      { label: DO_NOT_KNOW, answers: open.map((c) => ({ finding: c.id, state: "unknown" as const })) },
    ],
  };
}

function yesOrNo(id: string, finding: string, question: string): LayQuestion {
  const choice = (label: string, state: AnswerState): LayChoice => ({ label, answers: [{ finding, state }] });
  return {
    id,
    kind: "question",
    question,
    steps: [],
    cautions: [],
    choices: [choice(YES, "present"), choice(NO, "absent"), choice(DO_NOT_KNOW, "unknown")],
  };
}

/** A feature's question says "it": where several things are complained of, which is meant is said before. */
function inContext(knowledge: Knowledge, weighing: Weighing, id: string, question: string): string {
  const finding = parseFinding(knowledge, id);
  if (finding.kind !== "feature" || finding.complaint === undefined) return question;
  const present = [...weighing.assembled.gathered.complaints.values()].filter((c) => c.present);
  return present.length > 1 ? `${finding.complaint.name}: ${question}` : question;
}
