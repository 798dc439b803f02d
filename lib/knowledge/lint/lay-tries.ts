import { mayBeTried } from "../may-be-tried.ts";
import type { CompiledCheck, Knowledge } from "../schema/compiled.ts";
import type { Lay, LayTry } from "../schema/lay.ts";
import { firstOf, withoutWarnings } from "./plain-words.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** What is left to an owner cannot hurt anybody, and can be told without knowing a part. */
export const layTries: LintRule = {
  name: "lay-tries",
  about:
    "A check with lay words stands still, needs nobody else, lifts, loads, drives, spins and heats nothing, and is worded plainly.",
  check: ({ knowledge }) => {
    const { lay } = knowledge;
    const found: LintFinding[] = [];
    for (const check of knowledge.checks) {
      if (check.lay === undefined || lay === undefined) continue;
      const record = `checks/${check.id}.json`;
      if (!mayBeTried(knowledge, check)) {
        found.push({
          record,
          message: "it has lay words but may not be left to an owner",
          mend: "Remove its lay words: who, set-up, helper or what it does forbids it.",
        });
      }
      for (const [message, mend] of [
        ...unfitFindings(knowledge, check, check.lay),
        ...unfitWords(knowledge, lay, check, check.lay),
      ])
        found.push({ record, message, mend });
    }
    return found;
  },
};

type Unfit = readonly [message: string, mend: string];

function unfitFindings(knowledge: Knowledge, check: CompiledCheck, words: LayTry): Unfit[] {
  return words.settles.flatMap((id): Unfit[] => {
    if (!check.settles.includes(id))
      return [[`its lay words settle "${id}", which the check does not`, "Name one that it settles."]];
    const observation = knowledge.observations.find((o) => o.id === id);
    return observation?.lay === undefined
      ? [[`"${id}" has no lay choice`, `Give observations/${id}.json "lay" with a choice.`]]
      : [];
  });
}

function unfitWords(knowledge: Knowledge, lay: Lay, check: CompiledCheck, words: LayTry): Unfit[] {
  const unfit: Unfit[] = [];
  const choices = words.settles.map((id) => knowledge.observations.find((o) => o.id === id)?.lay?.choice);
  const told = [words.question, ...words.steps, ...words.cautions, ...choices].join(" . ");
  const trade = firstOf(lay.limits.jargon, told);
  if (trade !== undefined) unfit.push([`its lay words hold "${trade}"`, "Say it in everyday words."]);
  const done = [words.question, ...words.steps].map(withoutWarnings).join(" . ");
  const banned = firstOf(lay.limits.banned, done);
  if (banned !== undefined)
    unfit.push([`its lay words ask for "${banned}"`, "Nobody may be asked to do that by themselves."]);
  if (!words.question.endsWith("?") || words.question.length > lay.limits.questionLetters)
    unfit.push([`"${words.question}" is no short question`, "End it with a question mark and shorten it."]);
  const byPlace = check.places.length > 1 && words.settles.length > 1;
  if (byPlace !== words.question.includes("{place}"))
    unfit.push([
      byPlace
        ? "the question does not name the place"
        : "the question names a place, but asks for all at once",
      byPlace ? 'Write "{place}" where the place belongs.' : 'Take "{place}" out.',
    ]);
  return unfit;
}
