import { readingEase } from "../../maths/reading-ease.ts";
import type { LayWords } from "../schema/lay.ts";
import { firstOf } from "./plain-words.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** Whatever an owner can be asked is worded for one who knows nothing of cars. */
export const layWords: LintRule = {
  name: "lay-words",
  about:
    "Every complaint, feature and context has a short lay question without words of the trade, and the questions read easily.",
  check: ({ knowledge }) => {
    const { lay } = knowledge;
    if (lay === undefined) return [];
    const found: LintFinding[] = [];
    const offered = new Set(lay.together.flatMap((t) => t.features));
    const questions: string[] = [];
    const held = (record: string, words: LayWords | undefined, needsChoice: boolean): void => {
      const say = (message: string, mend: string): number => found.push({ record, message, mend });
      if (words === undefined) {
        say("no lay words", 'Give it "lay" with a question that anybody understands.');
        return;
      }
      questions.push(words.question);
      const { question, choice, example } = words;
      if (!question.endsWith("?")) say(`"${question}" is no question`, "End it with a question mark.");
      if (question.length > lay.limits.questionLetters)
        say(
          `the lay question has ${question.length} letters`,
          `Say it in at most ${lay.limits.questionLetters}.`,
        );
      if (needsChoice && choice === undefined)
        say("it is offered among others and has no lay choice", 'Give "lay.choice".');
      const trade = firstOf(lay.limits.jargon, [question, choice, example].join(" . "));
      if (trade !== undefined)
        say(`the lay words hold "${trade}"`, "Say it in everyday words; the help may explain.");
    };
    for (const { id, lay: words } of knowledge.complaints) held(`complaints/${id}.json`, words, true);
    for (const { id, lay: words } of knowledge.features) held(`features/${id}.json`, words, offered.has(id));
    for (const { id, lay: words } of knowledge.contexts) held(`contexts/${id}.json`, words, false);
    questions.push(lay.first.question, ...lay.together.map((t) => t.question));
    const ease = questions.reduce((sum, q) => sum + readingEase(q), 0) / questions.length;
    if (ease < lay.limits.ease) {
      found.push({
        record: "lay.json",
        message: `the reading ease of all lay questions is ${ease.toFixed(0)}, below ${lay.limits.ease}`,
        mend: "Shorten sentences and use shorter words.",
      });
    }
    return found;
  },
};
