import type { Component } from "./components.ts";

/** One finding of a check, as a noisy-max over grades; a yes/no finding has one level. */
export interface CheckFinding {
  readonly parents: Int32Array;
  /** For each level l = 0..L-1, aligned to parents: P(grade <= l | that parent alone, no leak). */
  readonly q: readonly Float64Array[];
  /** For each level: P(grade <= l | no parent). */
  readonly leakQ: readonly number[];
}

/** Results that a check can have, and the chance of each under each component. */
export interface CheckOutcomes {
  /** Grade of each finding, aligned to the findings; -1 for one that was left out. */
  readonly patterns: readonly (readonly number[])[];
  /** For each component, aligned to patterns: P(pattern | component). */
  readonly given: readonly Float64Array[];
}

/** Findings and patterns that are worked out at most; those with the least weight are left out. */
const MAX_FINDINGS = 6;
const MAX_PATTERNS = 256;

/**
 * Chance of every result of a check under every component.
 *
 * P(all findings at or below some grades) is a product over suspects; differences along each finding turn that
 * into the chance of each pattern, so findings keep their correlation through a shared suspect.
 * Of more than six findings, or more than 256 patterns, the ones that suspects show most are kept.
 */
export function checkOutcomes(
  components: readonly Component[],
  findings: readonly CheckFinding[],
): CheckOutcomes {
  const kept = keptFindings(components, findings);
  const sizes = kept.map((j) => (findings[j] as CheckFinding).leakQ.length + 1);
  const count = sizes.reduce((product, size) => product * size, 1);
  const { suspects, shown, leak } = cumulativeTables(kept, findings, sizes, count);
  const given = components.map(({ marginals }) => {
    const table = new Float64Array(count);
    for (let cell = 0; cell < count; cell++) {
      let product = leak[cell] as number;
      const offset = cell * suspects.length;
      for (let m = 0; m < suspects.length; m++) {
        product *= 1 - (marginals[suspects[m] as number] as number) * (shown[offset + m] as number);
      }
      table[cell] = product;
    }
    differences(table, sizes);
    return table;
  });
  const patterns = Array.from({ length: count }, (_, cell) => {
    const pattern = new Array<number>(findings.length).fill(-1);
    let left = cell;
    kept.forEach((j, at) => {
      const size = sizes[at] as number;
      pattern[j] = left % size;
      left = Math.floor(left / size);
    });
    return pattern;
  });
  return { patterns, given };
}

/** Places of the findings that are kept, in their own order. */
function keptFindings(components: readonly Component[], findings: readonly CheckFinding[]): number[] {
  const all = findings.map((_, j) => j);
  const cells = (list: readonly number[]): number =>
    list.reduce((product, j) => product * ((findings[j] as CheckFinding).leakQ.length + 1), 1);
  if (all.length <= MAX_FINDINGS && cells(all) <= MAX_PATTERNS) return all;
  const weights = findings.map(({ parents, q }) => {
    let weight = 0;
    for (const { probability, marginals } of components) {
      parents.forEach((i, p) => {
        weight += probability * (marginals[i] as number) * (1 - (q[0]?.[p] ?? 1));
      });
    }
    return weight;
  });
  const byWeight = all.toSorted((a, b) => (weights[b] as number) - (weights[a] as number) || a - b);
  const kept: number[] = [];
  for (const j of byWeight) {
    if (kept.length < MAX_FINDINGS && cells([...kept, j]) <= MAX_PATTERNS) kept.push(j);
  }
  return kept.sort((a, b) => a - b);
}

/** For each cell of grades: the leak's product, and for each suspect 1 - its product of q. */
function cumulativeTables(
  kept: readonly number[],
  findings: readonly CheckFinding[],
  sizes: readonly number[],
  count: number,
): { suspects: Int32Array; shown: Float64Array; leak: Float64Array } {
  const suspects = Int32Array.from(
    new Set(kept.flatMap((j) => [...(findings[j] as CheckFinding).parents])),
  ).sort();
  const place = new Map(Array.from(suspects, (i, m) => [i, m]));
  const silent = new Float64Array(count * suspects.length).fill(1);
  const leak = new Float64Array(count).fill(1);
  let stride = 1;
  kept.forEach((j, at) => {
    const { parents, q, leakQ } = findings[j] as CheckFinding;
    const places = Int32Array.from(parents, (i) => place.get(i) as number);
    const size = sizes[at] as number;
    for (let cell = 0; cell < count; cell++) {
      const level = Math.floor(cell / stride) % size;
      const row = q[level];
      // The highest grade is "whatever the grade": no factor.
      if (!row) continue;
      leak[cell] = (leak[cell] as number) * (leakQ[level] as number);
      const offset = cell * suspects.length;
      for (let p = 0; p < places.length; p++) {
        const to = offset + (places[p] as number);
        silent[to] = (silent[to] as number) * (row[p] as number);
      }
    }
    stride *= size;
  });
  return { suspects, leak, shown: silent.map((value) => 1 - value) };
}

/** Turns P(grade <= l) into P(grade = l) along every finding, in place; rounding below 0 is lifted to 0. */
function differences(table: Float64Array, sizes: readonly number[]): void {
  let stride = 1;
  for (const size of sizes) {
    for (let cell = table.length - 1; cell >= 0; cell--) {
      if (Math.floor(cell / stride) % size > 0) {
        table[cell] = (table[cell] as number) - (table[cell - stride] as number);
      }
    }
    stride *= size;
  }
  for (let cell = 0; cell < table.length; cell++) table[cell] = Math.max(0, table[cell] as number);
}
