import { disjointSets } from "../../maths/disjoint-sets.ts";
import { affordableLayout } from "./affordable-layout.ts";
import { type Bit, checkedEvidence } from "./checked-evidence.ts";
import { enumeratedPart } from "./enumerated-part.ts";
import type { CoreOptions, Evidence } from "./evidence.ts";
import { type FoldedOdds, foldedOdds } from "./folded-odds.ts";
import type { CutLink, Layout } from "./layout.ts";
import { oddsBounds } from "./odds-bounds.ts";
import { runLayout } from "./run.ts";

/** Proven bounds of P(suspect present | E), 0..1, indexed as the suspects are; alike where nothing was cut. */
export interface MarginalBounds {
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly cuts: number;
}

/** How the bounds are worked out. */
export interface BoundsOptions extends CoreOptions {
  /** Suspects of a part that is gone through set by set when links would have to be cut; MOST_ENUMERATED when left out. */
  readonly mostEnumerated?: number;
}

/** Sets of so many suspects are gone through at most: 65,536. */
const MOST_ENUMERATED = 16;
/** Plan cost of each of the three runs, unless the caller sets another: explaining comes on top of them. */
const BOUNDS_MAX_COST = 2e5;
/** Share of its links beyond which a part that loses them has bounds of nearly 0 to 1 by runs. */
const HOPELESS = 0.75;
/** More than a marginal near 1 can be off by rounding. */
const ROUNDING = 1e-12;

/** Suspects and findings that hang together before any cut; what is known of one part does not touch another. */
interface Part {
  readonly suspects: readonly number[];
  readonly active: readonly number[];
  /** Links between them that can fire. */
  readonly links: number;
}

/** Natural logs of P(suspect absent, E) and P(suspect present, E) in one model of a part. */
type LogJoint = readonly [absent: Float64Array, present: Float64Array];

/** The cut links of a model, and what each suspect's absence or presence is weighed with beside. */
interface Model {
  readonly cuts: readonly CutLink[];
  readonly logAbsent: Float64Array;
  readonly logPresent: Float64Array;
}

/**
 * Bounds every marginal by runs on one plan; only the treatment of the cut links differs.
 *
 * A finding's factor rises with every suspect (it falls for an answer likelier when the finding is absent). So
 * - a model whose factors are nowhere smaller bounds P(suspect = v, E) from above, one whose factors are nowhere
 *   larger from below, for both v;
 * - with independent copies (see affordableLayout) P(suspect present, E) is a lower bound by Chebyshev's
 *   inequality for rising functions, one link at a time; so is P(suspect absent, E) of a suspect that lost no link.
 * L1 / (L1 + U0) <= P(present | E) <= U1 / (U1 + L0), in each part that hangs together by itself.
 *
 * A part of few suspects is gone through set by set instead, and exact. One that would lose nearly all its links is not
 * worth the runs: then, as always where it is narrower, the bounds from the suspect's own links hold.
 *
 * Errors: as run.
 */
export function marginalBounds(evidence: Evidence, options: BoundsOptions = {}): MarginalBounds {
  const { prior, negatives, bits } = checkedEvidence(evidence);
  const odds = foldedOdds(prior, negatives);
  const active = bits.map((_, k) => k);
  const plan = affordableLayout(bits, active, odds.alpha, options.maxCost ?? BOUNDS_MAX_COST);
  const { low, high } = oddsBounds(bits, odds);
  const most = options.mostEnumerated ?? MOST_ENUMERATED;
  for (const part of partsOf(bits, odds.alpha)) {
    const own = planOf(plan, part);
    const { cuts } = own;
    const exact =
      cuts.length === 0
        ? runLayout(bits, own, { ...odds, logFactor: 0 }).marginals
        : part.suspects.length <= most
          ? enumeratedPart(bits, part.active, part.suspects, odds)
          : undefined;
    if (exact !== undefined) {
      for (const i of part.suspects) low[i] = high[i] = exact[i] as number;
    } else if (cuts.length <= HOPELESS * part.links) boundPart(bits, own, odds, part, low, high);
  }
  return { low, high, cuts: plan.cuts.length };
}

/** What of a plan concerns one part. */
function planOf(plan: Layout, part: Part): Layout {
  const inPart = new Set(part.active);
  return {
    ...plan,
    cuts: plan.cuts.filter(({ bit }) => inPart.has(bit)),
    active: part.active,
    groups: plan.groups.filter(({ steps }) => steps.some((s) => s.kind === "open" && inPart.has(s.bit))),
  };
}

/** Narrows the bounds of a part that lost links. */
function boundPart(
  bits: readonly Bit[],
  own: Layout,
  odds: FoldedOdds,
  part: Part,
  low: Float64Array,
  high: Float64Array,
): void {
  const { cuts } = own;
  const upper = logJoint(bits, own, odds, withoutLinks(bits, odds.alpha, cuts, true), ROUNDING);
  const lower = logJoint(bits, own, odds, withoutLinks(bits, odds.alpha, cuts, false), -ROUNDING);
  const n = odds.alpha.length;
  const none = new Float64Array(n);
  const rising = part.active.every((k) => rises(bits[k] as Bit));
  const copy = rising
    ? logJoint(bits, own, odds, { cuts, logAbsent: none, logPresent: none }, -ROUNDING)
    : undefined;
  const lostLink = new Set(cuts.map(({ fault }) => fault));
  const at = (joint: LogJoint, v: 0 | 1, i: number): number => joint[v][i] as number;
  for (const i of part.suspects) {
    if (odds.alpha[i] === 0 || odds.beta[i] === 0) continue;
    let absent = at(lower, 0, i);
    let present = at(lower, 1, i);
    if (copy) present = Math.max(present, at(copy, 1, i));
    if (copy && !lostLink.has(i)) absent = Math.max(absent, at(copy, 0, i));
    low[i] = Math.max(low[i] as number, share(present, at(upper, 0, i)));
    high[i] = Math.min(high[i] as number, share(at(upper, 1, i), absent));
  }
}

/** a / (a + b) from natural logs; 0 when a is 0, also if b is 0 too. */
function share(logA: number, logB: number): number {
  return logA === Number.NEGATIVE_INFINITY ? 0 : 1 / (1 + Math.exp(logB - logA));
}

function rises({ ifAbsent, ifPresent }: Bit): boolean {
  return ifPresent >= ifAbsent;
}

/**
 * Replaces each cut link by a constant link and a factor on its suspect alone.
 *
 * Above: the link fires as if the suspect were there, and its absence is weighed with r <= 1, the largest ratio of
 * the finding's factor without and with the suspect. Below: the link is gone, and presence is weighed with 1/r.
 * The ratio is largest when all others that still count are present. A falling factor has the two ways swapped.
 */
function withoutLinks(
  bits: readonly Bit[],
  alpha: Float64Array,
  cuts: readonly CutLink[],
  above: boolean,
): Model {
  const logAbsent = new Float64Array(alpha.length);
  const logPresent = new Float64Array(alpha.length);
  /** Smallest chance that each finding is unexplained in this model so far. */
  const least = new Map<number, number>();
  const replaced = cuts.map((cut): CutLink => {
    const bit = bits[cut.bit] as Bit;
    const w = bit.w[bit.parents.indexOf(cut.fault)] as number;
    const fires = above === rises(bit) ? w : 0;
    if (!rises(bit)) return { ...cut, fires };
    const withAll = least.get(cut.bit) ?? leastUnexplained(bit, alpha);
    const withoutOne = withAll / (1 - w);
    const factor = (u: number): number => bit.ifPresent - (bit.ifPresent - bit.ifAbsent) * u;
    const logRatio = Math.log(factor(withoutOne) / factor(withAll));
    const [side, news] = above ? [logAbsent, logRatio] : [logPresent, -logRatio];
    side[cut.fault] = (side[cut.fault] as number) + news;
    least.set(cut.bit, above ? withAll : withoutOne);
    return { ...cut, fires };
  });
  return { cuts: replaced, logAbsent, logPresent };
}

function leastUnexplained({ leak, parents, w }: Bit, alpha: Float64Array): number {
  return parents.reduce((u, i, p) => ((alpha[i] as number) > 0 ? u * (1 - (w[p] as number)) : u), 1 - leak);
}

/** `slack` widens what is left of 1 after a subtraction, so that rounding never narrows a bound. */
function logJoint(
  bits: readonly Bit[],
  plan: Layout,
  odds: FoldedOdds,
  model: Model,
  slack: number,
): LogJoint {
  const alpha = odds.alpha.slice();
  const beta = odds.beta.slice();
  let logFactor = 0;
  for (const i of new Set(plan.cuts.map(({ fault }) => fault))) {
    const present = (alpha[i] as number) * Math.exp(model.logPresent[i] as number);
    const absent = (beta[i] as number) * Math.exp(model.logAbsent[i] as number);
    alpha[i] = present / (present + absent);
    beta[i] = absent / (present + absent);
    logFactor += Math.log(present + absent);
  }
  const run = runLayout(bits, { ...plan, cuts: model.cuts }, { alpha, beta, logFactor });
  return [
    run.marginals.map((m) => run.logEvidence + Math.log(Math.max(0, 1 - m + slack))),
    run.marginals.map((m) => run.logEvidence + Math.log(m)),
  ];
}

/** Parts of the network by links that can fire, over the suspects that have any. */
function partsOf(bits: readonly Bit[], alpha: Float64Array): Part[] {
  const sets = disjointSets(alpha.length + bits.length);
  const live = bits.map(({ parents, w }) => parents.filter((i, p) => w[p] !== 0 && alpha[i] !== 0));
  live.forEach((parents, k) => {
    for (const i of parents) sets.join(alpha.length + k, i);
  });
  const parts = new Map<number, { suspects: number[]; active: number[]; links: number }>();
  live.forEach((parents, k) => {
    const key = sets.find(alpha.length + k);
    const part = parts.get(key) ?? { suspects: [], active: [], links: 0 };
    part.active.push(k);
    part.links += parents.length;
    parts.set(key, part);
  });
  alpha.forEach((_, i) => parts.get(sets.find(i))?.suspects.push(i));
  return [...parts.values()];
}
