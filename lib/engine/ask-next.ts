import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Answer } from "./answers.ts";
import type { Grounded } from "./ground.ts";
import { choiceOf, doNotKnow, type LayQuestion } from "./lay/lay-question.ts";
import { plainQuestions } from "./lay/questions.ts";
import { whatWasTold } from "./lay/told.ts";
import { safeTries } from "./lay/tries.ts";
import { capital } from "./names.ts";
import { proposeChecks } from "./propose.ts";
import type { Weighing } from "./weigh.ts";

export interface AskNextOptions {
  /** Most questions given. */
  readonly most: number;
  /** Who answers: the driver can say what is noticed at the wheel. */
  readonly who: "owner" | "driver";
  /** Ids of questions, or findings, that are not to be asked (again). */
  readonly notAgain?: readonly string[] | undefined;
}

/** Id of the question that comes first of all. */
const FIRST = "ask:complaint";

/**
 * The most telling questions for somebody who knows nothing of cars, best first: expected information about what explains
 * the complaint per minute, as for any check. `answers` are all of the case, those about what happened lately included.
 *
 * Nothing drives or raises the car, needs a tool or goes underneath. What was answered, "unknown" included, is not asked
 * again. While nobody complains of anything, the one question is what is wrong. Empty when there is nothing left to learn.
 *
 * Errors: `unknown-id` for an answer or a placed finding of `notAgain` that the knowledge does not hold.
 */
export function askNext(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: AskNextOptions,
): LayQuestion[] {
  const { most, who, notAgain = [] } = options;
  if (weighing.explanation === undefined) {
    const first = whatIsWrong(grounded.knowledge, answers, new Set(notAgain));
    return first === undefined ? [] : [first].slice(0, most);
  }
  const told = whatWasTold(grounded, answers, notAgain);
  const proposed = proposeChecks(grounded, answers, weighing, { who, only: "questions" });
  return [
    ...plainQuestions(grounded, weighing, proposed, told),
    ...safeTries(grounded, answers, weighing, told, who),
  ]
    .filter(({ question }) => !told.finding(question.id))
    .sort((a, b) => b.score - a.score || (a.question.id < b.question.id ? -1 : 1))
    .slice(0, most)
    .map(({ question }) => question);
}

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
    ...(knowledge.lay?.first ?? { question: "What is wrong with the car?" }),
    steps: [],
    cautions: [],
    choices: [
      ...open.map((c) => choiceOf(capital(c.lay?.choice ?? c.name), "present", c.id)),
      doNotKnow(open.map((c) => c.id)),
    ],
  };
}
