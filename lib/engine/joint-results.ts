import { type CheckFinding, checkOutcomes, type Component } from "./core/index.ts";

/** One joint result of some checks: each component's chance together with it. They sum to the chance of the result. */
export type JointResult = Float64Array;

/** Results of one check, and of several, that are kept apart; rarer ones count as one, which can only lower what they tell. */
const MOST_OF_ONE = 12;
const MOST_OF_ALL = 32;
/** Results rarer than this are left out altogether: rounding. */
const RAREST = 1e-9;

/** Before any check: one result, sure to come. */
export function noResult(components: readonly Component[]): JointResult[] {
  return [Float64Array.from(components, (c) => c.probability)];
}

/**
 * Chance of each result of a check under each component, the rare results taken together.
 *
 * Shape: one row a result, aligned to the components; the rows of a component sum to 1.
 */
export function resultChances(
  components: readonly Component[],
  findings: readonly CheckFinding[],
): Float64Array[] {
  const { patterns, given } = checkOutcomes(components, findings);
  const rows: Ranked[] = [];
  for (let o = 0; o < patterns.length; o++) {
    const row = new Float64Array(components.length);
    let chance = 0;
    for (let c = 0; c < row.length; c++) {
      const p = (given[c] as Float64Array)[o] as number;
      row[c] = p;
      chance += p * (components[c] as Component).probability;
    }
    rows.push({ row, chance });
  }
  return commonest(rows, MOST_OF_ONE);
}

/**
 * Splits every result by what one more check may find.
 *
 * Given a component, results of different checks are taken as independent.
 */
export function splitResults(
  results: readonly JointResult[],
  chances: readonly Float64Array[],
): JointResult[] {
  const split: Ranked[] = [];
  for (const before of results) {
    for (const given of chances) {
      const row = new Float64Array(before.length);
      let chance = 0;
      for (let c = 0; c < row.length; c++) {
        const joint = (before[c] as number) * (given[c] as number);
        row[c] = joint;
        chance += joint;
      }
      if (chance > RAREST) split.push({ row, chance });
    }
  }
  return commonest(split, MOST_OF_ALL);
}

/**
 * What joint results tell of which repair it is, in bits: mutual information of value and result.
 *
 * `values` gives each component its value; components of one repair share one.
 */
export function jointGain(results: readonly JointResult[], values: Int32Array): number {
  const count = values.reduce((most, v) => Math.max(most, v), -1) + 1;
  const ofValue = new Float64Array(count);
  const own = new Float64Array(count);
  let total = 0;
  let joint = 0;
  let ofResult = 0;
  for (const result of results) {
    own.fill(0);
    let chance = 0;
    for (let c = 0; c < result.length; c++) {
      const weight = result[c] as number;
      const value = values[c] as number;
      own[value] = (own[value] as number) + weight;
      chance += weight;
    }
    for (let value = 0; value < count; value++) {
      joint += plogp(own[value] as number);
      ofValue[value] = (ofValue[value] as number) + (own[value] as number);
    }
    ofResult += plogp(chance);
    total += chance;
  }
  if (total <= 0) return 0;
  const byValue = ofValue.reduce((sum, weight) => sum + plogp(weight), 0);
  return Math.max(0, (joint - byValue - ofResult + plogp(total)) / total);
}

interface Ranked {
  readonly row: Float64Array;
  readonly chance: number;
}

/** The commonest rows, and the sum of all others as one. */
function commonest(rows: Ranked[], most: number): Float64Array[] {
  if (rows.length <= most) return rows.map((r) => r.row);
  rows.sort((a, b) => b.chance - a.chance);
  const rare = new Float64Array(rows[0]?.row.length ?? 0);
  for (let k = most - 1; k < rows.length; k++) {
    const { row } = rows[k] as Ranked;
    for (let c = 0; c < rare.length; c++) rare[c] = (rare[c] as number) + (row[c] as number);
  }
  return [...rows.slice(0, most - 1).map((r) => r.row), rare];
}

function plogp(p: number): number {
  return p > 0 ? p * Math.log2(p) : 0;
}
