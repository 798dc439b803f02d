import { CornerwiseError } from "../../errors.ts";
import {
  type Evidence,
  LEAK_CEILING,
  LEAK_FLOOR,
  type NegativeFactor,
  type PositiveBit,
  STRENGTH_CEILING,
} from "./evidence.ts";

/** A positive bit after checking: clamped, with its read-out weights spelt out. */
export interface Bit {
  readonly leak: number;
  readonly parents: Int32Array;
  readonly w: Float64Array;
  /** P(what was answered | finding absent); 0 for a reliable answer. */
  readonly ifAbsent: number;
  /** P(what was answered | finding present); 1 for a reliable answer. */
  readonly ifPresent: number;
}

/** Evidence that passed the checks. */
export interface CheckedEvidence {
  readonly prior: Float64Array;
  readonly negatives: readonly NegativeFactor[];
  readonly bits: readonly Bit[];
}

/**
 * Checks evidence and clamps leaks and strengths, without touching the input.
 *
 * Errors: empty-model (no suspect), probability-out-of-range, bad-request (lengths or indices that do not fit).
 */
export function checkedEvidence(evidence: Evidence): CheckedEvidence {
  const { prior, negatives, positives } = evidence;
  if (prior.length === 0) {
    throw new CornerwiseError("empty-model", "There is no suspect to weigh: give at least one prior.");
  }
  for (let i = 0; i < prior.length; i++) requireProbability(prior[i] as number, `prior of suspect ${i}`);
  const seenBy = new Int32Array(prior.length).fill(-1);
  let factor = 0;
  negatives.forEach((negative, k) => {
    const where = `absent finding ${k}`;
    requireProbability(negative.leakQ, `leakQ of ${where}`);
    requireParents(negative.parents, negative.q, where, seenBy, factor++);
  });
  const bits = positives.map((positive, k) => {
    const where = `present finding ${k}`;
    requireProbability(positive.leak, `leak of ${where}`);
    requireParents(positive.parents, positive.w, where, seenBy, factor++);
    return checkedBit(positive, where);
  });
  return { prior, negatives, bits };
}

function checkedBit(positive: PositiveBit, where: string): Bit {
  const [ifAbsent, ifPresent] = positive.soft ?? [0, 1];
  requireProbability(ifAbsent, `soft weight (absent) of ${where}`);
  requireProbability(ifPresent, `soft weight (present) of ${where}`);
  return {
    leak: Math.min(LEAK_CEILING, Math.max(LEAK_FLOOR, positive.leak)),
    parents: positive.parents,
    w: positive.w.some((strength) => strength > STRENGTH_CEILING)
      ? positive.w.map((strength) => Math.min(STRENGTH_CEILING, strength))
      : positive.w,
    ifAbsent,
    ifPresent,
  };
}

function requireProbability(value: number, what: string): void {
  if (!(value >= 0 && value <= 1)) {
    throw new CornerwiseError(
      "probability-out-of-range",
      `The ${what} is ${value}; it must be a number from 0 to 1.`,
      { what, value },
    );
  }
}

function requireParents(
  parents: Int32Array,
  strengths: Float64Array,
  where: string,
  seenBy: Int32Array,
  factor: number,
): void {
  if (parents.length !== strengths.length) {
    throw new CornerwiseError(
      "bad-request",
      `The ${where} has ${parents.length} parents but ${strengths.length} strengths; give one for each.`,
      { where },
    );
  }
  for (let p = 0; p < parents.length; p++) {
    const parent = parents[p] as number;
    if (parent < 0 || parent >= seenBy.length) {
      throw new CornerwiseError(
        "bad-request",
        `The ${where} names suspect ${parent}; suspects run from 0 to ${seenBy.length - 1}.`,
        { where, parent },
      );
    }
    if (seenBy[parent] === factor) {
      throw new CornerwiseError(
        "bad-request",
        `The ${where} names suspect ${parent} twice; merge the two links into one.`,
        { where, parent },
      );
    }
    seenBy[parent] = factor;
    requireProbability(strengths[p] as number, `strength of suspect ${parent} in ${where}`);
  }
}
