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

/** Tables of checks whose findings list is used again: they do not depend on the evidence. */
const TABLES = new WeakMap<readonly CheckFinding[], Tables>();

interface Tables {
  readonly patterns: readonly (readonly number[])[];
  readonly suspects: Int32Array;
  readonly shown: Float64Array;
  readonly leak: Float64Array;
}

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
  const suspectCount = components[0]?.marginals.length ?? 0;
  const whole = kept.length === findings.length;
  const tables =
    (whole ? TABLES.get(findings) : undefined) ??
    cumulativeTables(kept, findings, sizes, count, suspectCount);
  if (whole) TABLES.set(findings, tables);
  const { patterns, suspects, shown, leak } = tables;
  const given: Float64Array[] = [];
  components.forEach(({ marginals }, c) => {
    // Most components leave the suspects of most checks as another one has them: then the row is the same as well.
    const same = components.findIndex((other, o) => o < c && alike(other.marginals, marginals, suspects));
    if (same >= 0) {
      given.push(given[same] as Float64Array);
      return;
    }
    const table = leak.slice();
    for (let m = 0; m < suspects.length; m++) {
      const present = marginals[suspects[m] as number] as number;
      const offset = m * count;
      for (let cell = 0; cell < count; cell++) {
        table[cell] = (table[cell] as number) * (1 - present * (shown[offset + cell] as number));
      }
    }
    differences(table, sizes);
    given.push(table);
  });
  return { patterns, given };
}

/** Are these suspects exactly as likely in both? */
function alike(a: Float64Array, b: Float64Array, suspects: Int32Array): boolean {
  for (let m = 0; m < suspects.length; m++) {
    const i = suspects[m] as number;
    if (a[i] !== b[i]) return false;
  }
  return true;
}

/** The grade of each finding in every cell of a table; -1 for one that was left out. */
function patternsOf(
  kept: readonly number[],
  findings: number,
  sizes: readonly number[],
  count: number,
): number[][] {
  return Array.from({ length: count }, (_, cell) => {
    const pattern = new Array<number>(findings).fill(-1);
    let left = cell;
    kept.forEach((j, at) => {
      const size = sizes[at] as number;
      pattern[j] = left % size;
      left = Math.floor(left / size);
    });
    return pattern;
  });
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

/** The pattern of each cell of grades; for each cell the leak's product; for each suspect and cell, 1 - the suspect's product of q. */
function cumulativeTables(
  kept: readonly number[],
  findings: readonly CheckFinding[],
  sizes: readonly number[],
  count: number,
  suspectCount: number,
): Tables {
  const places = new Int32Array(suspectCount).fill(-1);
  const suspects: number[] = [];
  for (const j of kept) {
    const { parents } = findings[j] as CheckFinding;
    for (let p = 0; p < parents.length; p++) {
      const i = parents[p] as number;
      if (places[i] === -1) places[i] = suspects.push(i) - 1;
    }
  }
  const shown = new Float64Array(count * suspects.length).fill(1);
  const leak = new Float64Array(count).fill(1);
  let stride = 1;
  kept.forEach((j, at) => {
    const { parents, q, leakQ } = findings[j] as CheckFinding;
    const size = sizes[at] as number;
    // The highest grade is "whatever the grade" and has no factor: hence no row for it.
    for (let level = 0; level < leakQ.length; level++) {
      const row = q[level] as Float64Array;
      scaleCells(leak, 0, count, level * stride, stride, size, leakQ[level] as number);
      for (let p = 0; p < parents.length; p++) {
        const offset = (places[parents[p] as number] as number) * count;
        scaleCells(shown, offset, count, level * stride, stride, size, row[p] as number);
      }
    }
    stride *= size;
  });
  for (let at = 0; at < shown.length; at++) shown[at] = 1 - (shown[at] as number);
  const patterns = patternsOf(kept, findings.length, sizes, count);
  return { patterns, suspects: Int32Array.from(suspects), shown, leak };
}

/** Multiplies the cells in which one finding has one grade. */
function scaleCells(
  table: Float64Array,
  offset: number,
  count: number,
  first: number,
  stride: number,
  size: number,
  factor: number,
): void {
  for (let block = offset + first; block < offset + count; block += stride * size) {
    for (let cell = block; cell < block + stride; cell++) table[cell] = (table[cell] as number) * factor;
  }
}

/** Turns P(grade <= l) into P(grade = l) along every finding, in place; rounding below 0 is lifted to 0. */
function differences(table: Float64Array, sizes: readonly number[]): void {
  let stride = 1;
  for (const size of sizes) {
    for (let block = 0; block < table.length; block += stride * size) {
      for (let cell = block + stride * size - 1; cell >= block + stride; cell--) {
        table[cell] = (table[cell] as number) - (table[cell - stride] as number);
      }
    }
    stride *= size;
  }
  for (let cell = 0; cell < table.length; cell++) table[cell] = Math.max(0, table[cell] as number);
}
