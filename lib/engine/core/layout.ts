import { disjointSets } from "../../maths/disjoint-sets.ts";
import type { Bit } from "./checked-evidence.ts";
import { type EliminationPlan, eliminationPlan, type HeavyFault } from "./elimination-plan.ts";

/** One link that was cut: it acts as a leak of its own, independent of the suspect. */
export interface CutLink {
  readonly bit: number;
  readonly fault: number;
  /** Chance that the cut link fires: alpha * w at the time of cutting. */
  readonly fires: number;
}

/** Where a suspect is dealt with. */
export type Home =
  | { readonly kind: "alone" } // no positive finding: its odds stand
  | { readonly kind: "absorbed"; readonly bit: number; readonly w: number } // one finding: part of its leak
  | { readonly kind: "heavy"; readonly group: number; readonly step: number };

/** A connected group of suspects with two or more positive findings, planned. */
export type GroupPlan = EliminationPlan;

/** What depends on the positive findings only: kept when odds change, so that one plan serves several runs. */
export interface Layout {
  /** Positive findings that take part. */
  readonly active: readonly number[];
  readonly homes: readonly Home[];
  /** Suspects absorbed by each positive finding (indexed as the findings are). */
  readonly absorbed: readonly (readonly number[])[];
  readonly cuts: readonly CutLink[];
  readonly groups: readonly GroupPlan[];
  /** Group and step at which each finding opens; undefined for one without heavy suspects. */
  readonly opens: readonly ({ readonly group: number; readonly step: number } | undefined)[];
  readonly cost: number;
}

/** How hard to look for a plan. */
interface LayoutLimits {
  readonly bound?: number;
  /** Take the first plan within the bound: to learn whether there is one. */
  readonly firstWithin?: boolean;
}

const ALONE: Home = { kind: "alone" };

/** A key for the link from a suspect to a finding. */
function linkKey(bit: number, fault: number, suspects: number): number {
  return bit * suspects + fault;
}

/**
 * Sorts suspects into alone, absorbed and heavy, and plans each connected group.
 *
 * Returns undefined when the plan would cost more than the bound.
 */
export function layout(
  bits: readonly Bit[],
  active: readonly number[],
  alpha: Float64Array,
  cuts: readonly CutLink[] = [],
  limits: LayoutLimits = {},
): Layout | undefined {
  const n = alpha.length;
  const cutKeys = new Set(cuts.map(({ bit, fault }) => linkKey(bit, fault, n)));
  const children: number[][] = Array.from({ length: n }, () => []);
  const strengths: number[][] = Array.from({ length: n }, () => []);
  for (const k of active) {
    const { parents, w } = bits[k] as Bit;
    for (let p = 0; p < parents.length; p++) {
      const fault = parents[p] as number;
      const strength = w[p] as number;
      // A link that cannot fire carries no news; leaving it out keeps the plan narrow.
      if (strength === 0 || alpha[fault] === 0 || cutKeys.has(linkKey(k, fault, n))) continue;
      (children[fault] as number[]).push(k);
      (strengths[fault] as number[]).push(strength);
    }
  }
  const homes: Home[] = new Array<Home>(n).fill(ALONE);
  const absorbed: number[][] = bits.map(() => []);
  const heavy: HeavyFault[] = [];
  for (let fault = 0; fault < n; fault++) {
    const own = children[fault] as number[];
    const w = strengths[fault] as number[];
    if (own.length === 1) {
      const bit = own[0] as number;
      homes[fault] = { kind: "absorbed", bit, w: w[0] as number };
      (absorbed[bit] as number[]).push(fault);
    } else if (own.length > 1) {
      heavy.push({ fault, bits: Int32Array.from(own), w: Float64Array.from(w) });
    }
  }
  const groups: GroupPlan[] = [];
  const opens: ({ group: number; step: number } | undefined)[] = bits.map(() => undefined);
  let cost = 0;
  for (const faults of connectedGroups(heavy, bits.length)) {
    const plan = eliminationPlan(
      faults,
      (limits.bound ?? Number.POSITIVE_INFINITY) - cost,
      limits.firstWithin,
    );
    if (!plan) return undefined;
    const group = groups.length;
    plan.steps.forEach((step, at) => {
      if (step.kind === "open") opens[step.bit] = { group, step: at };
      if (step.kind === "fault") homes[step.fault] = { kind: "heavy", group, step: at };
    });
    groups.push(plan);
    cost += plan.cost;
  }
  return { active, homes, absorbed, cuts, groups, opens, cost };
}

function connectedGroups(heavy: readonly HeavyFault[], bitCount: number): HeavyFault[][] {
  const sets = disjointSets(bitCount);
  for (const { bits } of heavy) for (const bit of bits) sets.join(bits[0] as number, bit);
  const groups = new Map<number, HeavyFault[]>();
  for (const fault of heavy) {
    const key = sets.find(fault.bits[0] as number);
    const group = groups.get(key);
    if (group) group.push(fault);
    else groups.set(key, [fault]);
  }
  return [...groups.values()];
}
