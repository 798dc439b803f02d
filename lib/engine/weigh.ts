import type { Answer, AnswerProblem } from "./answers.ts";
import { type Assembled, assembleEvidence } from "./assemble.ts";
import { explain, type Explanation, marginalBounds, posterior } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import { decisivelySeenSuspects, provenSuspects } from "./proven.ts";
import { type StopNotice, stopNotices } from "./stop-notices.ts";
import type { Suspect } from "./suspect.ts";

/** A chance that was not worked out exactly lies from `low` to `high`, both 0..1. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** A suspect with its chances. */
export interface RankedSuspect {
  readonly suspect: Suspect;
  /** Chance that it explains the complaint (or the findings, when nobody complained; or that it is there, with no answer). */
  readonly explains: number;
  /** Chance that the fault is there, whether or not it explains anything. */
  readonly present: number;
  /** Only when links were cut and bounds asked for: proven bounds of `present`; what it explains is at most `high`. */
  readonly presentBounds?: Bounds | undefined;
  /** A decisive finding of it was seen by hand. */
  readonly proven: boolean;
}

/** Faults that together explain the target. */
export interface ExplainingSet {
  readonly suspects: readonly string[];
  readonly probability: number;
}

/** What is known after the answers. */
export interface Weighed {
  /** Best first; ties by id. Every suspect of the car is in it. */
  readonly ranking: readonly RankedSuspect[];
  readonly target: Assembled["target"];
  /** Chance that the cause lies outside this knowledge. */
  readonly notInKnowledge: number;
  /** Likeliest explaining sets, best first. */
  readonly sets: readonly ExplainingSet[];
  /** Certified share of all explaining sets that `sets` does not list. */
  readonly otherCombinations: number;
  /** True when links had to be cut to stay within the budget; the chances are then estimates, with bounds by `bounded`. */
  readonly approximate: boolean;
  /** Natural log of the probability of all answers; while `approximate`, a lower bound of it. */
  readonly logEvidence: number;
  readonly notices: readonly StopNotice[];
  /** Suspects with a decisive finding, likeliest first. */
  readonly proven: readonly string[];
  readonly problems: readonly AnswerProblem[];
}

/** Weighing with what the next steps need of it; not for storing. */
export interface Weighing {
  /** Without bounds: see `bounded`. */
  readonly weighed: Weighed;
  readonly assembled: Assembled;
  readonly explanation: Explanation | undefined;
}

/** Sets below this chance are left to `otherCombinations`. */
const SMALLEST_SET = 2e-4;
const MOST_SETS = 400;

/**
 * Weighs the answers about a car: the chance of every suspect, what explains the complaint, what is not known.
 *
 * Exact up to the budget of the core; `approximate` says when links were cut. No answer at all gives the priors.
 *
 * Errors: `unknown-id`, `bad-request` from the answers; `impossible-evidence` when no cause and no leak can give them.
 */
export function weigh(grounded: Grounded, answers: readonly Answer[]): Weighed {
  return bounded(grounded, weighing(grounded, answers));
}

const BOUNDED = new WeakMap<Weighing, Weighed>();

/**
 * What is known, with proven bounds when links were cut; as it is when none were.
 *
 * The bounds take as long again as the weighing: for what is shown, not for what is only looked at ahead.
 */
export function bounded(grounded: Grounded, weighing: Weighing): Weighed {
  const { weighed, assembled } = weighing;
  if (!weighed.approximate) return weighed;
  const kept = BOUNDED.get(weighing);
  if (kept !== undefined) return kept;
  const { low, high } = marginalBounds(assembled.evidence);
  const ranking = weighed.ranking.map((ranked): RankedSuspect => {
    const { index } = ranked.suspect;
    const bounds = { low: low[index] ?? 0, high: high[index] ?? 1 };
    // The estimate nearest to what is proven is nearer to the truth, too.
    const present = Math.min(bounds.high, Math.max(bounds.low, ranked.present));
    return {
      ...ranked,
      explains: Math.min(ranked.explains, bounds.high),
      present,
      presentBounds: bounds,
    };
  });
  const made = { ...weighed, ranking: inOrder(grounded, ranking) };
  BOUNDED.set(weighing, made);
  return made;
}

/** As `weigh` but for bounds, keeping what choosing the next check needs. */
export function weighing(grounded: Grounded, answers: readonly Answer[]): Weighing {
  const assembled = assembleEvidence(grounded, answers);
  const { evidence, targets } = assembled;
  const explanation = targets.length > 0 ? explain(evidence, targets) : undefined;
  const base = explanation ?? posterior(evidence);
  const explains = explanation?.involved ?? base.marginals;
  const seen = decisivelySeenSuspects(grounded, assembled);
  const proven = provenSuspects(grounded, seen, base.marginals);
  const ranking = inOrder(
    grounded,
    grounded.suspects.map((suspect) => ({
      suspect,
      explains: clamp(explains[suspect.index] ?? 0),
      present: clamp(base.marginals[suspect.index] ?? 0),
      proven: proven.has(suspect.id),
    })),
  );
  const { sets, rest } = explainingSets(grounded, explanation);
  return {
    assembled,
    explanation,
    weighed: {
      ranking,
      target: assembled.target,
      notInKnowledge: explanation === undefined ? 0 : clamp(explanation.none),
      sets,
      otherCombinations: rest,
      approximate: base.approximate,
      logEvidence: base.logEvidence,
      notices: stopNotices(grounded, base.marginals, seen),
      proven: ranking.filter((r) => r.proven).map((r) => r.suspect.id),
      problems: assembled.problems,
    },
  };
}

/** Best first; ties by id. Sorts what it is given. */
function inOrder(grounded: Grounded, ranking: RankedSuspect[]): RankedSuspect[] {
  const byId = idOrder(grounded);
  return ranking.sort(
    (a, b) => b.explains - a.explains || (byId[a.suspect.index] ?? 0) - (byId[b.suspect.index] ?? 0),
  );
}

const ID_ORDER = new WeakMap<Grounded, Int32Array>();

/** Place of each suspect when they are sorted by id: numbers are compared faster than texts. */
function idOrder(grounded: Grounded): Int32Array {
  const kept = ID_ORDER.get(grounded);
  if (kept !== undefined) return kept;
  const order = new Int32Array(grounded.suspects.length);
  grounded.suspects
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .forEach((suspect, place) => {
      order[suspect.index] = place;
    });
  ID_ORDER.set(grounded, order);
  return order;
}

function explainingSets(
  grounded: Grounded,
  explanation: Explanation | undefined,
): { sets: ExplainingSet[]; rest: number } {
  if (explanation === undefined) return { sets: [], rest: 0 };
  const id = (i: number): string => grounded.suspects[i]?.id ?? "";
  const all: ExplainingSet[] = [];
  explanation.singles.forEach((probability, i) => {
    if (probability >= SMALLEST_SET) all.push({ suspects: [id(i)], probability });
  });
  for (const { i, j, probability } of explanation.pairs) {
    if (probability >= SMALLEST_SET) all.push({ suspects: [id(i), id(j)], probability });
  }
  all.sort((a, b) => b.probability - a.probability || (a.suspects.join() < b.suspects.join() ? -1 : 1));
  const sets = all.slice(0, MOST_SETS);
  const listed = sets.reduce((sum, s) => sum + s.probability, explanation.none);
  return { sets, rest: clamp(1 - listed) };
}

function clamp(p: number): number {
  return Math.min(1, Math.max(0, p));
}
