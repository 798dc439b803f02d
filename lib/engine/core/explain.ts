import { CornerwiseError } from "../../errors.ts";
import { affordableLayout } from "./affordable-layout.ts";
import { type Bit, type CheckedEvidence, checkedEvidence } from "./checked-evidence.ts";
import { type Component, type ComponentSource, type ExplainingPair, gainComponents } from "./components.ts";
import { type Cover, coverOf } from "./cover.ts";
import type { CoreOptions, Evidence, NegativeFactor } from "./evidence.ts";
import { foldedOdds } from "./folded-odds.ts";
import { layout, type Layout } from "./layout.ts";
import { type Run, runLayout } from "./run.ts";

/** Which suspects explain the targets: the explaining set C holds those whose link fired on at least one of them. */
export interface Explanation {
  /** Natural log of P(E). */
  readonly logEvidence: number;
  /** P(suspect present | E). */
  readonly marginals: Float64Array;
  /** True when links were cut to stay within the cost; links to the targets never are. */
  readonly approximate: boolean;
  readonly cuts: number;
  readonly planCost: number;
  /** P(C is empty | E): the cause is not in the knowledge. */
  readonly none: number;
  /** P(C is this suspect alone | E). */
  readonly singles: Float64Array;
  /** Pairs that were worked out, likeliest first. */
  readonly pairs: readonly ExplainingPair[];
  /** 1 - none - singles - listed pairs: no set left out is likelier than this. */
  readonly residual: number;
  /** P(suspect in C | E), exact. */
  readonly involved: Float64Array;
  /** The mixture that checkGain reads; `limit` is the largest number of sets in it. */
  components(limit: number): readonly Component[];
}

/** Targets that explain takes at most: their links are never cut, so each may double the cost. */
export const MAX_TARGETS = 12;
/** Below this share of P(E) in P(E without the target) the difference would lose too many digits. */
const SMALLEST_DIFFERENCE = 0.01;
/** Pairs below this are left in the residual. */
const SMALLEST_PAIR = 2e-5;
/** Pairs are sought until less than this is unlisted. */
const RESIDUAL_GOAL = 5e-3;
/** Conditionings cost about planCost each; this many units of it are spent. */
const CONDITIONING_BUDGET = 2.5e6;

/**
 * Works out who explains the targets, given all the evidence.
 *
 * Errors: as run; bad-request when targets is empty, too long, repeated or out of range.
 */
export function explain(
  evidence: Evidence,
  targets: readonly number[],
  options: CoreOptions = {},
): Explanation {
  const checked = checkedEvidence(evidence);
  requireTargets(targets, checked.bits.length);
  const bits = targets.map((k) => checked.bits[k] as Bit);
  const runs = differenceRuns(checked, targets, options) ?? directRuns(checked, targets, options);
  return explanationOf(runs, coverOf(bits, checked.prior.length), bits, options);
}

/** The run with the targets silent, and what it was compared with. */
interface TargetRuns {
  readonly silent: SilentRun;
  readonly logEvidence: number;
  readonly marginals: Float64Array;
  readonly involved: Float64Array;
  readonly planCost: number;
}

/** A run of everything but the targets, which are taken as silent. */
interface SilentRun extends Run {
  /** P(each suspect present | suspects i and j present), by a run with i taken as sure. */
  conditionBoth(i: number, j: number): Float64Array;
}

/** One reliable target: P(E) = P(target left out) - P(target silent), both on one plan that lacks its bit. */
function differenceRuns(
  checked: CheckedEvidence,
  targets: readonly number[],
  options: CoreOptions,
): TargetRuns | undefined {
  const k = targets[0] as number;
  const { ifAbsent, ifPresent, parents, w } = checked.bits[k] as Bit;
  if (targets.length > 1 || ifAbsent !== 0 || ifPresent !== 1) return undefined;
  const odds = foldedOdds(checked.prior, checked.negatives);
  const plan = affordableLayout(checked.bits, others(checked, targets), odds.alpha, options.maxCost);
  const without = runLayout(checked.bits, plan, odds);
  const silent = silentRun(checked, targets, plan);
  const ratio = Math.exp(silent.logEvidence - without.logEvidence);
  if (1 - ratio < SMALLEST_DIFFERENCE) return undefined;
  const involved = new Float64Array(checked.prior.length);
  parents.forEach((i, p) => {
    involved[i] = Math.min(1, ((w[p] as number) * (without.marginals[i] as number)) / (1 - ratio));
  });
  const marginals = without.marginals.map((m, i) =>
    inUnit((m - ratio * (silent.marginals[i] as number)) / (1 - ratio)),
  );
  const logEvidence = without.logEvidence + Math.log1p(-ratio);
  return { silent, involved, marginals, logEvidence, planCost: plan.cost };
}

/** Any targets: one run of everything, one with the targets silent and the same links cut. */
function directRuns(checked: CheckedEvidence, targets: readonly number[], options: CoreOptions): TargetRuns {
  const { bits, prior, negatives } = checked;
  const odds = foldedOdds(prior, negatives);
  const all = bits.map((_, k) => k);
  const plan = affordableLayout(bits, all, odds.alpha, options.maxCost, targets);
  const whole = runLayout(bits, plan, odds);
  // Without a bound the layout always exists.
  const rest = layout(bits, others(checked, targets), odds.alpha, plan.cuts) as Layout;
  return {
    silent: silentRun(checked, targets, rest),
    logEvidence: whole.logEvidence,
    marginals: whole.marginals,
    involved: whole.anyFired(targets),
    planCost: plan.cost,
  };
}

function silentRun(checked: CheckedEvidence, targets: readonly number[], plan: Layout): SilentRun {
  const silences = targets.map((k): NegativeFactor => {
    const { leak, parents, w } = checked.bits[k] as Bit;
    return { leakQ: 1 - leak, parents, q: w.map((strength) => 1 - strength) };
  });
  const odds = foldedOdds(checked.prior, [...checked.negatives, ...silences]);
  return {
    ...runLayout(checked.bits, plan, odds),
    conditionBoth: (i, j) => {
      const alpha = odds.alpha.with(i, 1);
      const beta = odds.beta.with(i, 0);
      return runLayout(checked.bits, plan, { ...odds, alpha, beta }).condition(j);
    },
  };
}

function others(checked: CheckedEvidence, targets: readonly number[]): number[] {
  return checked.bits.map((_, k) => k).filter((k) => !targets.includes(k));
}

function explanationOf(
  runs: TargetRuns,
  cover: Cover,
  targets: readonly Bit[],
  options: CoreOptions,
): Explanation {
  const { silent, logEvidence, marginals, involved, planCost } = runs;
  const share = Math.exp(silent.logEvidence - logEvidence);
  const none = Math.min(1, share * cover([]));
  const candidates = [...new Set(targets.flatMap(({ parents }) => [...parents]))]
    .filter((i) => (silent.marginals[i] as number) > 0)
    .sort((a, b) => a - b);
  const singles = new Float64Array(marginals.length);
  for (const i of candidates) {
    singles[i] = Math.min(1, share * (silent.marginals[i] as number) * cover([i]));
  }
  const given = memoised((i) => silent.condition(i));
  const conditionings = Math.min(
    options.maxConditionings ?? Number.POSITIVE_INFINITY,
    Math.min(24, Math.max(3, Math.floor(CONDITIONING_BUDGET / Math.max(1, silent.planCost)))),
  );
  const unlisted = 1 - none - singles.reduce((sum, p) => sum + p, 0);
  const pairProbability = (i: number, j: number): number =>
    share * (silent.marginals[i] as number) * (given(i)[j] as number) * cover([i, j]);
  const found = likelyPairs(
    candidates,
    singles,
    involved,
    unlisted,
    Math.min(12, conditionings),
    pairProbability,
  );
  const source: ComponentSource = {
    marginals,
    silent: silent.marginals,
    none,
    singles,
    pairs: found.pairs,
    given,
    givenBoth: (i, j) => silent.conditionBoth(i, j),
  };
  const mixtures = new Map<number, readonly Component[]>();
  return {
    logEvidence,
    marginals,
    approximate: silent.approximate,
    cuts: silent.cuts,
    planCost,
    none,
    singles,
    pairs: found.pairs,
    residual: found.residual,
    involved,
    components: (limit) => {
      const kept = mixtures.get(limit) ?? gainComponents(source, limit, conditionings);
      mixtures.set(limit, kept);
      return kept;
    },
  };
}

/** Pairs around the suspects that most often act together with others, which is known exactly beforehand. */
function likelyPairs(
  candidates: readonly number[],
  singles: Float64Array,
  involved: Float64Array,
  unlisted: number,
  conditionings: number,
  pairProbability: (i: number, j: number) => number,
): { pairs: ExplainingPair[]; residual: number } {
  const together = involved.map((p, i) => p - (singles[i] as number));
  const done = new Uint8Array(singles.length);
  const pairs: ExplainingPair[] = [];
  let residual = Math.max(0, unlisted);
  for (let turn = 0; turn < Math.min(conditionings, candidates.length) && residual > RESIDUAL_GOAL; turn++) {
    let next = -1;
    for (const i of candidates) {
      if (done[i] === 0 && (next < 0 || (together[i] as number) > (together[next] as number))) next = i;
    }
    if (!((together[next] as number) > SMALLEST_PAIR)) break;
    done[next] = 1;
    for (const j of candidates) {
      // What a suspect does together with others bounds every pair that it is in.
      if (done[j] === 1 || (together[j] as number) < SMALLEST_PAIR) continue;
      const probability = pairProbability(next, j);
      if (probability < SMALLEST_PAIR) continue;
      pairs.push({ i: Math.min(next, j), j: Math.max(next, j), probability });
      together[j] = (together[j] as number) - probability;
      residual -= probability;
    }
  }
  pairs.sort((a, b) => b.probability - a.probability || a.i - b.i || a.j - b.j);
  return { pairs, residual: Math.max(0, residual) };
}

function requireTargets(targets: readonly number[], count: number): void {
  const usable =
    targets.length > 0 && targets.length <= MAX_TARGETS && new Set(targets).size === targets.length;
  if (!usable || targets.some((k) => !Number.isInteger(k) || k < 0 || k >= count)) {
    throw new CornerwiseError(
      "bad-request",
      `Targets must be 1 to ${MAX_TARGETS} different present findings out of ${count}; got [${targets.join(", ")}].`,
      { targets: [...targets], count },
    );
  }
}

function memoised(compute: (i: number) => Float64Array): (i: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (i) => {
    const value = known.get(i) ?? compute(i);
    known.set(i, value);
    return value;
  };
}

function inUnit(value: number): number {
  return Math.min(1, Math.max(0, value));
}
