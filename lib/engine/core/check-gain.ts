import { type CheckFinding, type CheckOutcomes, checkOutcomes } from "./check-outcomes.ts";
import type { Component } from "./components.ts";

/** What a check is expected to teach. */
export interface CheckGain {
  /** Expected information about which value is true, in bits; never negative. */
  readonly gainBits: number;
  /** Every result with its chance: the grade of each finding, -1 for one that was left out. */
  readonly outcomes: readonly { readonly pattern: readonly number[]; readonly probability: number }[];
}

/**
 * Expected information from making a check about which merged value is true.
 *
 * `merged` gives each component its value: components with the same repair share one, for there is nothing to
 * learn between them.
 */
export function checkGain(
  components: readonly Component[],
  merged: Int32Array,
  findings: readonly CheckFinding[],
): CheckGain {
  const outcomes = checkOutcomes(components, findings);
  const { bits, weight, ofResult } = information(components, merged, outcomes);
  return {
    gainBits: bits,
    outcomes: outcomes.patterns.map((pattern, o) => ({
      pattern,
      probability: weight > 0 ? (ofResult[o] as number) / weight : 0,
    })),
  };
}

/** The expected information alone, without the list of results. */
export function checkBits(
  components: readonly Component[],
  merged: Int32Array,
  findings: readonly CheckFinding[],
): number {
  return information(components, merged, checkOutcomes(components, findings)).bits;
}

function information(
  components: readonly Component[],
  merged: Int32Array,
  { patterns, given }: CheckOutcomes,
): { bits: number; weight: number; ofResult: Float64Array } {
  const results = patterns.length;
  const values = merged.reduce((most, value) => Math.max(most, value), -1) + 1;
  const joint = new Float64Array(values * results);
  const ofValue = new Float64Array(values);
  const ofResult = new Float64Array(results);
  components.forEach(({ probability }, c) => {
    const value = merged[c] as number;
    const row = given[c] as Float64Array;
    ofValue[value] = (ofValue[value] as number) + probability;
    for (let o = 0; o < results; o++) {
      const mass = probability * (row[o] as number);
      const cell = value * results + o;
      joint[cell] = (joint[cell] as number) + mass;
      ofResult[o] = (ofResult[o] as number) + mass;
    }
  });
  const weight = ofValue.reduce((sum, p) => sum + p, 0);
  // Mutual information of weights that sum to `weight`: H(result) + H(value) - H(both).
  const bits =
    weight > 0 ? (plogp(joint) - plogp(ofValue) - plogp(ofResult) + weight * Math.log2(weight)) / weight : 0;
  return { bits: Math.max(0, bits), weight, ofResult };
}

/** Sum of p log2 p, with 0 log 0 = 0. */
function plogp(weights: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < weights.length; k++) {
    const p = weights[k] as number;
    if (p > 0) sum += p * Math.log2(p);
  }
  return sum;
}
