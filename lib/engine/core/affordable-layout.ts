import type { Bit } from "./checked-evidence.ts";
import { DEFAULT_MAX_COST, MAX_COST } from "./evidence.ts";
import { type CutLink, type Layout, layout } from "./layout.ts";

/**
 * Plans within a cost, cutting as few of the weakest links as that needs.
 *
 * A cut link becomes a leak of its own: the suspect in one finding is replaced by an independent copy. The
 * evidence is a product of functions that all rise with every suspect, so the cut model's P(E) is a lower bound
 * (positive association) unless an unreliable answer is likelier when the finding is absent.
 * Links to `kept` findings are never cut, even if the cost then stays above the limit.
 */
export function affordableLayout(
  bits: readonly Bit[],
  active: readonly number[],
  alpha: Float64Array,
  maxCost = DEFAULT_MAX_COST,
  kept: readonly number[] = [],
): Layout {
  const bound = maxCost > 0 ? Math.min(maxCost, MAX_COST) : 0;
  const whole = layout(bits, active, alpha, [], { bound });
  if (whole) return whole;
  const candidates = weakestFirst(bits, active, alpha, kept);
  let tooFew = 0;
  let enough = candidates.length;
  while (enough - tooFew > 1) {
    const count = (tooFew + enough) >>> 1;
    const limits = { bound, firstWithin: true };
    if (layout(bits, active, alpha, candidates.slice(0, count), limits)) enough = count;
    else tooFew = count;
  }
  const cuts = candidates.slice(0, enough);
  // Without a bound the layout always exists.
  return layout(bits, active, alpha, cuts, { bound }) ?? (layout(bits, active, alpha, cuts) as Layout);
}

/** Links whose loss matters least first: alpha * (share of this finding) * (share of the suspect's best other). */
function weakestFirst(
  bits: readonly Bit[],
  active: readonly number[],
  alpha: Float64Array,
  kept: readonly number[],
): CutLink[] {
  const untouchable = new Set(kept);
  const links = active.flatMap((bit) => {
    const { parents, w, leak } = bits[bit] as Bit;
    let absent = 1 - leak;
    for (let p = 0; p < parents.length; p++) {
      absent *= 1 - (alpha[parents[p] as number] as number) * (w[p] as number);
    }
    const share = 1 / Math.max(1 - absent, leak);
    return Array.from(parents, (fault, p) => ({
      bit,
      fault,
      w: w[p] as number,
      weight: (w[p] as number) * share,
    }));
  });
  const best = new Float64Array(alpha.length);
  const second = new Float64Array(alpha.length);
  for (const { fault, weight } of links) {
    if (weight > (best[fault] as number)) {
      second[fault] = best[fault] as number;
      best[fault] = weight;
    } else if (weight > (second[fault] as number)) second[fault] = weight;
  }
  return links
    .filter(({ bit, fault, w }) => w > 0 && (second[fault] as number) > 0 && !untouchable.has(bit))
    .map(({ bit, fault, w, weight }) => {
      const present = alpha[fault] as number;
      const other = weight === best[fault] ? second[fault] : best[fault];
      return { bit, fault, fires: present * w, score: present * weight * (other as number) };
    })
    .sort((a, b) => a.score - b.score || a.bit - b.bit || a.fault - b.fault);
}
