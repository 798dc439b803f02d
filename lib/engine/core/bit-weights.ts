import type { Bit } from "./checked-evidence.ts";
import type { FoldedOdds } from "./folded-odds.ts";
import type { Layout } from "./layout.ts";

/** Chance that a finding is unexplained (u) or explained (e) by its leak, cut links and absorbed suspects. */
export interface BitWeights {
  readonly u: Float64Array;
  readonly e: Float64Array;
}

/** Gathers everything that concerns one finding only; e is a sum of positive pieces, never 1 - u. */
export function bitWeights(bits: readonly Bit[], plan: Layout, odds: FoldedOdds): BitWeights {
  const u = new Float64Array(bits.length);
  const e = new Float64Array(bits.length);
  const absorb = (k: number, fires: number): void => {
    e[k] = (e[k] as number) + (u[k] as number) * fires;
    u[k] = (u[k] as number) * (1 - fires);
  };
  for (const k of plan.active) {
    const { leak } = bits[k] as Bit;
    u[k] = 1 - leak;
    e[k] = leak;
  }
  for (const { bit, fires } of plan.cuts) absorb(bit, fires);
  for (const k of plan.active) {
    for (const fault of plan.absorbed[k] as readonly number[]) {
      const home = plan.homes[fault];
      if (home?.kind === "absorbed") absorb(k, (odds.alpha[fault] as number) * home.w);
    }
  }
  return { u, e };
}

/**
 * The finding's weights given that an absorbed suspect is present, times that suspect's alpha.
 *
 * `u` and `e` include the suspect already; the result takes its chance out again without a subtraction.
 */
export function forcedWeights(
  alpha: number,
  beta: number,
  w: number,
  u: number,
  e: number,
): { readonly u: number; readonly e: number } {
  const others = u / (1 - alpha * w);
  return { u: alpha * others * (1 - w), e: alpha * (e + others * w * beta) };
}
