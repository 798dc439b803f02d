import { entropyBits } from "../../maths/entropy-bits.ts";
import { type CheckFinding, checkOutcomes } from "./check-outcomes.ts";
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
  const { patterns, given } = checkOutcomes(components, findings);
  const total = new Float64Array(patterns.length);
  const byValue = new Map<number, { probability: number; joint: Float64Array }>();
  components.forEach(({ probability }, c) => {
    const value = merged[c] as number;
    const entry = byValue.get(value) ?? { probability: 0, joint: new Float64Array(patterns.length) };
    byValue.set(value, entry);
    entry.probability += probability;
    const row = given[c] as Float64Array;
    for (let o = 0; o < row.length; o++) {
      const mass = probability * (row[o] as number);
      entry.joint[o] = (entry.joint[o] as number) + mass;
      total[o] = (total[o] as number) + mass;
    }
  });
  let within = 0;
  let weight = 0;
  for (const { probability, joint } of byValue.values()) {
    within += probability * entropyBits(joint);
    weight += probability;
  }
  return {
    gainBits: weight > 0 ? Math.max(0, entropyBits(total) - within / weight) : 0,
    outcomes: patterns.map((pattern, o) => ({
      pattern,
      probability: weight > 0 ? (total[o] as number) / weight : 0,
    })),
  };
}
