import {
  type Answer,
  type Grounded,
  groundCar,
  type PreviewedResult,
  type ProposedCheck,
  type ProposeOptions,
  previewResults,
  proposeChecks,
  type Weighing,
  weighing,
} from "../../lib/engine/index.ts";
import { answerOfCase, type Situation } from "../../lib/case/situation.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeOf } from "../knowledge/knowledge-of.ts";

/** Weighings kept: that of the case, and those of the answers that may come next. */
const MOST_KEPT = 16;
/** Results worked out ahead for the open check. */
const MOST_FORESEEN = 4;

let knowledge: Knowledge | undefined;
let grounded: { readonly key: string; readonly value: Grounded } | undefined;
const weighed = new Map<string, Weighing>();
const proposed = new WeakMap<Weighing, Map<string, readonly ProposedCheck[]>>();
/** A result that a check may have, without its weighing: only those of the likeliest are kept. */
type Foreseen = Omit<PreviewedResult, "weighing">;

const previewed = new WeakMap<Weighing, Map<string, readonly Foreseen[]>>();

/** The situation that was asked for last: what is worked out in the background for another one is given up. */
let newest = "";

/** Takes the knowledge in; nothing that was worked out with another one is kept. */
export function load(text: string, isNewest: boolean): void {
  knowledge = knowledgeOf(text, isNewest);
  grounded = undefined;
  weighed.clear();
}

export function loaded(): Knowledge {
  if (knowledge === undefined) throw new Error("The knowledge has not arrived.");
  return knowledge;
}

/** Says that this situation is asked for now, and gives back whether it still is. */
export function askedFor({ car, contexts, fitted, answers }: Situation): () => boolean {
  const key = JSON.stringify([car, contexts, fitted, answers]);
  newest = key;
  return () => newest === key;
}

/** Lets messages that wait be answered first. */
export async function pause(): Promise<void> {
  await new Promise((go) => setTimeout(go));
}

export function groundOf({ car, contexts, fitted }: Situation): Grounded {
  const key = JSON.stringify([car, contexts, fitted]);
  if (grounded?.key !== key) {
    grounded = { key, value: groundCar(loaded(), car, contexts, fitted) };
    weighed.clear();
  }
  return grounded.value;
}

export function weighingOf(situation: Situation): Weighing {
  const ground = groundOf(situation);
  const value = weighed.get(keyOf(situation.answers)) ?? weighing(ground, situation.answers);
  keep(situation.answers, value);
  return value;
}

function keyOf(answers: readonly Answer[]): string {
  return JSON.stringify(answers);
}

/** Keeps a weighing as the newest; the oldest goes first. */
function keep(answers: readonly Answer[], value: Weighing): void {
  const key = keyOf(answers);
  weighed.delete(key);
  weighed.set(key, value);
  for (const oldest of weighed.keys()) {
    if (weighed.size <= MOST_KEPT) break;
    weighed.delete(oldest);
  }
}

/** All checks worth making, kept for the decision and the batch that are asked for next. */
export function proposals(situation: Situation, options: ProposeOptions): readonly ProposedCheck[] {
  const weighing = weighingOf(situation);
  const unlimited = { ...options, limit: undefined };
  return keptOf(proposed, weighing, JSON.stringify(unlimited), () =>
    proposeChecks(groundOf(situation), situation.answers, weighing, unlimited),
  );
}

/** What each result of a check would do. The weighings of the likeliest are kept: one of them is asked for next. */
export function previews(situation: Situation, check: ProposedCheck): readonly Foreseen[] {
  const now = weighingOf(situation);
  return keptOf(previewed, now, check.id, () => {
    const results = previewResults(groundOf(situation), situation.answers, check, now);
    for (const { answers, weighing: then } of likeliest(results).toReversed()) {
      if (then !== undefined) keep(answersAfter(situation, answers), then);
    }
    return results.map(({ weighing: _, ...shown }) => shown);
  });
}

function likeliest<T extends { readonly probability: number }>(results: readonly T[]): T[] {
  return results.toSorted((a, b) => b.probability - a.probability).slice(0, MOST_FORESEEN);
}

function answersAfter(situation: Situation, found: readonly Answer[]): readonly Answer[] {
  return [...situation.answers, ...found.map(answerOfCase)];
}

/**
 * Weighs the results that the open check is likely to have, and chooses what would come next, while nobody waits: a tap
 * then meets its answer ready. Given up as soon as another situation is asked for.
 */
export async function foresee(
  situation: Situation,
  options: ProposeOptions,
  check: ProposedCheck | undefined,
): Promise<void> {
  if (check === undefined) return;
  const stillAsked = askedFor(situation);
  await pause();
  if (!stillAsked()) return;
  const likely = likeliest(previews(situation, check));
  const after = { ...options, setUp: check.kind === "check" ? check.setUp : options.setUp };
  for (const { answers } of likely) {
    await pause();
    if (!stillAsked()) return;
    proposals({ ...situation, answers: answersAfter(situation, answers) }, after);
  }
}

/** What was worked out from a weighing under a key, made when it is not there yet; it goes when the weighing goes. */
export function keptOf<T>(
  store: WeakMap<Weighing, Map<string, T>>,
  weighing: Weighing,
  key: string,
  make: () => T,
): T {
  const kept = store.get(weighing) ?? new Map<string, T>();
  store.set(weighing, kept);
  const value = kept.get(key) ?? make();
  kept.set(key, value);
  return value;
}
