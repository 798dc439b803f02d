import type { CheckFinding, Evidence, NegativeFactor, PositiveBit } from "../../lib/engine/core/index.ts";

/** Uniform numbers in 0..1 from a seed. Source: Marsaglia's xorshift family, the mulberry32 mixing, from memory. */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Bounds of a small random model. */
export interface SmallModelShape {
  readonly suspects: readonly [number, number];
  readonly positives: readonly [number, number];
  readonly negatives: readonly [number, number];
  readonly parents: readonly [number, number];
  /** Share of positive findings whose answer is unreliable. */
  readonly soft?: number;
}

/** A small random model: wide priors and strengths, a few extreme ones. */
export function smallModel(seed: number, shape: SmallModelShape): Evidence {
  const uniform = seededUniform(seed);
  const n = between(uniform, shape.suspects);
  const prior = Float64Array.from({ length: n }, () =>
    uniform() < 0.1 ? 0.001 : uniform() < 0.05 ? 1 : 0.01 + 0.6 * uniform(),
  );
  const strength = (): number => (uniform() < 0.05 ? 0.99 : 0.02 + 0.93 * uniform());
  const parentsOf = (): Int32Array => pick(uniform, n, Math.min(n, between(uniform, shape.parents)));
  const negatives = Array.from({ length: between(uniform, shape.negatives) }, (): NegativeFactor => {
    const parents = parentsOf();
    return { leakQ: 1 - 0.1 * uniform(), parents, q: Float64Array.from(parents, () => 1 - strength()) };
  });
  const positives = Array.from({ length: between(uniform, shape.positives) }, (): PositiveBit => {
    const parents = parentsOf();
    const bit = {
      leak: 10 ** (-4 + 3.5 * uniform()),
      parents,
      w: Float64Array.from(parents, strength),
    };
    return uniform() < (shape.soft ?? 0) ? { ...bit, soft: [uniform(), uniform()] } : bit;
  });
  return { prior, negatives, positives };
}

/** A large random knowledge with one simulated car: 150 suspects, 300 findings, 120 checks by default. */
export interface LargeModel {
  readonly prior: Float64Array;
  readonly findings: readonly { leak: number; parents: Int32Array; w: Float64Array }[];
  /** Findings that each check settles. */
  readonly checks: readonly (readonly number[])[];
  /** Whether each finding is there, in a car drawn from the model. */
  readonly truth: Uint8Array;
}

/**
 * Local structure as on a car: suspects sit on a ring and mostly show findings near to them.
 *
 * Priors 0.0005..0.3 (12 % are wear, 0.05..0.3), leaks 0.001..0.1, about 15 findings a suspect, 1 to 46 parents a
 * finding. At least `present` findings are there.
 */
export function largeModel(seed: number, present: number, suspects = 150, findingCount = 300): LargeModel {
  const uniform = seededUniform(seed);
  const prior = Float64Array.from({ length: suspects }, () =>
    uniform() < 0.12 ? 0.05 + 0.25 * uniform() : 0.0005 * 40 ** uniform(),
  );
  const parents: number[][] = Array.from({ length: findingCount }, () => []);
  for (let i = 0; i < suspects; i++) {
    const children = new Set<number>();
    const wanted = between(uniform, [8, 23]);
    while (children.size < wanted) {
      const local = Math.floor(
        (i / suspects) * findingCount + 40 * (uniform() + uniform() + uniform() - 1.5),
      );
      // A sixth of the links go to findings that anything can show, such as a noise or a pull.
      const at = uniform() < 1 / 6 ? Math.floor(24 * uniform()) * 12 : local;
      children.add(((at % findingCount) + findingCount) % findingCount);
    }
    for (const k of children) parents[k]!.push(i);
  }
  const findings = parents.map((list) => ({
    leak: 0.001 * 100 ** uniform(),
    parents: Int32Array.from(list),
    w: Float64Array.from(list, () => 0.05 + 0.9 * uniform()),
  }));
  const checks = Array.from({ length: 120 }, () => {
    const start = Math.floor(findingCount * uniform());
    return Array.from({ length: between(uniform, [1, 6]) }, (_, d) => (start + d) % findingCount);
  });
  const truth = new Uint8Array(findingCount);
  let found = 0;
  for (let attempt = 0; found < present; attempt++) {
    const has = Array.from(prior, (p) => uniform() < p * (1 + attempt / 5));
    found = 0;
    findings.forEach(({ leak, parents: own, w }, k) => {
      let absent = 1 - leak;
      own.forEach((i, p) => {
        if (has[i]) absent *= 1 - w[p]!;
      });
      const there = uniform() >= absent ? 1 : 0;
      truth[k] = there;
      found += there;
    });
  }
  return { prior, findings, checks, truth };
}

/** Evidence with a given number of the car's present findings answered, and some absent ones. */
export function answered(
  model: LargeModel,
  seed: number,
  present: number,
  absent: number,
): { readonly evidence: Evidence; readonly known: Set<number> } {
  const uniform = seededUniform(seed);
  const order = Array.from(pick(uniform, model.findings.length, model.findings.length));
  const shown = order.filter((k) => model.truth[k]).slice(0, present);
  const missing = order.filter((k) => !model.truth[k]).slice(0, absent);
  const positives = shown.map((k) => model.findings[k]!);
  const negatives = missing.map((k) => {
    const { leak, parents, w } = model.findings[k]!;
    return { leakQ: 1 - leak, parents, q: w.map((strength) => 1 - strength) };
  });
  return { evidence: { prior: model.prior, negatives, positives }, known: new Set([...shown, ...missing]) };
}

/** A check's findings that are not known yet, as checkGain takes them. */
export function openFindings(
  model: LargeModel,
  check: readonly number[],
  known: Set<number>,
): CheckFinding[] {
  return check
    .filter((k) => !known.has(k))
    .map((k) => {
      const { leak, parents, w } = model.findings[k]!;
      return { parents, q: [w.map((strength) => 1 - strength)], leakQ: [1 - leak] };
    });
}

/** A whole number within bounds, both included. */
export function between(uniform: () => number, [low, high]: readonly [number, number]): number {
  return low + Math.floor((high - low + 1) * uniform());
}

/** Some different numbers below n, in random order. */
export function pick(uniform: () => number, n: number, count: number): Int32Array {
  const all = Int32Array.from({ length: n }, (_, i) => i);
  for (let at = 0; at < count; at++) {
    const other = at + Math.floor((n - at) * uniform());
    const held = all[at]!;
    all[at] = all[other]!;
    all[other] = held;
  }
  return all.slice(0, count);
}
