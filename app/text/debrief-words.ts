import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import type { DebriefStep } from "../../lib/training/debrief.ts";
import type { Score } from "../../lib/training/score.ts";
import { minutesWords } from "./amounts.ts";
import { percent } from "./chance-words.ts";
import { nameOfCheck } from "./names.ts";

/** A check by its name, a question as something that is asked. */
export function doneWords(knowledge: Knowledge, id: string): string {
  const name = nameOfCheck(knowledge, id);
  return id.startsWith("ask:") ? `asking for "${name}"` : name;
}

/** What the words of a verdict go by. */
type Named = Partial<Pick<Score, "right" | "rightPart" | "complete">>;

/** Whether the verdict was right, in a sentence. */
export function verdictWords({ right, rightPart, complete }: Named): string {
  if (right === true) {
    return complete === true ? "Right." : "Right, but not the whole of it, or with something more.";
  }
  return rightPart === true ? "The right part, at the wrong place." : "Not the fault behind the complaint.";
}

/** How well the stated confidence fitted; Brier's score runs from 0, the best, to 1. */
export function brierWords(confidence: number, right: boolean, brier: number): string {
  const score = `Brier score ${brier.toFixed(2)}, where 0 is best and 1 is worst`;
  return `You were ${percent(confidence)} sure, and it was ${right ? "right" : "wrong"}: ${score}.`;
}

/** What the words of a step go by. */
type Stepped = Pick<
  DebriefStep,
  "id" | "minutes" | "gainBits" | "lost" | "repeated" | "forbidden" | "cautionSkipped" | "afterProof"
> &
  Partial<Pick<DebriefStep, "best">>;

/** Under this many minutes nobody lost anything to speak of. */
const NOTHING_LOST = 0.25;

/** Why a step was good or what would have been better then, each in a sentence. */
export function stepWords(step: Stepped, nameOf: (id: string) => string): string[] {
  return [
    choiceWords(step, nameOf),
    ...(step.forbidden ? ["Dangerous as things stood: on a real car, do not."] : []),
    ...(step.cautionSkipped ? ["Its cautions were not acknowledged first."] : []),
    ...(step.afterProof ? ["The repair could already be named before it."] : []),
  ];
}

function choiceWords(step: Stepped, nameOf: (id: string) => string): string {
  const { best, lost } = step;
  if (step.repeated) return `It was known already: ${minutesWords(step.minutes)} lost.`;
  if (best === undefined) return "Nothing was left that would have told anything.";
  if (best.id === step.id) return "The check that told most for its minutes then.";
  if (lost < NOTHING_LOST) return "As good as the best choice then.";
  const rate = step.gainBits / step.minutes;
  const times = rate > 0 ? best.gainBits / best.minutes / rate : Number.POSITIVE_INFINITY;
  const more =
    times >= 100 || !Number.isFinite(times)
      ? "this one could tell next to nothing of the cause"
      : times >= 1.15
        ? `it tells about ${times < 10 ? times.toFixed(1) : Math.round(times)} times as much a minute`
        : "it tells a little more a minute";
  return `Better then: ${nameOf(best.id)} (${minutesWords(best.minutes)}): ${more}. About ${minutesWords(lost)} lost.`;
}
