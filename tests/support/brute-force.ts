import type { Evidence } from "../../lib/engine/core/index.ts";

/** What enumeration over every set of suspects says; independent of the core, and slow on purpose. */
export interface BruteForce {
  readonly evidence: number;
  readonly marginals: number[];
  /** P(E, this set of suspects): index = set as bits. */
  readonly joint: Float64Array;
}

/** Sums over all 2^n sets of suspects; n up to about 14. */
export function bruteForce({ prior, negatives, positives }: Evidence): BruteForce {
  const n = prior.length;
  const joint = new Float64Array(2 ** n);
  for (let set = 0; set < joint.length; set++) {
    const has = (i: number): boolean => ((set >> i) & 1) === 1;
    let p = 1;
    for (let i = 0; i < n; i++) p *= has(i) ? prior[i]! : 1 - prior[i]!;
    for (const { leakQ, parents, q } of negatives) {
      p *= leakQ;
      parents.forEach((i, at) => {
        if (has(i)) p *= q[at]!;
      });
    }
    for (const { leak, parents, w, soft } of positives) {
      // In logs: 1 - product would lose digits where the leak is small.
      let logAbsent = Math.log1p(-leak);
      parents.forEach((i, at) => {
        if (has(i)) logAbsent += Math.log1p(-w[at]!);
      });
      const [ifAbsent, ifPresent] = soft ?? [0, 1];
      p *= ifAbsent * Math.exp(logAbsent) - ifPresent * Math.expm1(logAbsent);
    }
    joint[set] = p;
  }
  const evidence = joint.reduce((sum, p) => sum + p, 0);
  const marginals = Array.from({ length: n }, (_, i) => conditional(joint, (set) => ((set >> i) & 1) === 1));
  return { evidence, marginals, joint };
}

/** P(event | E) for an event over sets of suspects. */
export function conditional(joint: Float64Array, event: (set: number) => boolean): number {
  let inside = 0;
  let total = 0;
  joint.forEach((p, set) => {
    total += p;
    if (event(set)) inside += p;
  });
  return inside / total;
}

/** What enumeration over suspects and over every firing of the targets' links and leaks says. */
export interface FiringCounts {
  readonly evidence: number;
  /** P(explaining set | E): key = set of suspects as bits. */
  readonly explaining: Map<number, number>;
  /** P(suspects present, explaining set | E): key = `${suspects},${explaining}`. */
  readonly joint: Map<string, number>;
  /** For each target: P(leak fired | E), and P(link fired | E) by suspect. */
  readonly leaks: number[];
  readonly links: Map<number, number>[];
}

/**
 * Enumerates sets of suspects, and for each the firing of every link and leak of the targets.
 *
 * Cost 2^(suspects + links + leaks): keep models tiny.
 */
export function enumerateFirings(model: Evidence, targets: readonly number[]): FiringCounts {
  const rest: Evidence = { ...model, positives: model.positives.filter((_, k) => !targets.includes(k)) };
  const { joint: base } = bruteForce(rest);
  const explaining = new Map<number, number>();
  const joint = new Map<string, number>();
  const leaks = targets.map(() => 0);
  const links = targets.map(() => new Map<number, number>());
  let evidence = 0;
  const bits = targets.map((k) => model.positives[k]!);
  const edges = bits.flatMap(({ parents, w }, t) => Array.from(parents, (i, p) => ({ t, i, w: w[p]! })));
  for (let set = 0; set < base.length; set++) {
    const live = edges.filter(({ i }) => (set >> i) & 1);
    for (let leakMask = 0; leakMask < 2 ** targets.length; leakMask++) {
      for (let mask = 0; mask < 2 ** live.length; mask++) {
        let p = base[set]!;
        let fired = 0;
        const shown = bits.map(({ leak }, t) => {
          const on = ((leakMask >> t) & 1) === 1;
          p *= on ? leak : 1 - leak;
          return on;
        });
        live.forEach(({ t, i, w }, at) => {
          const on = ((mask >> at) & 1) === 1;
          p *= on ? w : 1 - w;
          if (on) {
            shown[t] = true;
            fired |= 1 << i;
          }
        });
        bits.forEach(({ soft }, t) => {
          p *= (soft ?? [0, 1])[shown[t] ? 1 : 0];
        });
        if (p === 0) continue;
        evidence += p;
        explaining.set(fired, (explaining.get(fired) ?? 0) + p);
        const key = `${set},${fired}`;
        joint.set(key, (joint.get(key) ?? 0) + p);
        bits.forEach((_, t) => {
          if ((leakMask >> t) & 1) leaks[t]! += p;
        });
        live.forEach(({ t, i }, at) => {
          if ((mask >> at) & 1) links[t]!.set(i, (links[t]!.get(i) ?? 0) + p);
        });
      }
    }
  }
  const scaled = <K>(map: Map<K, number>): Map<K, number> =>
    new Map(Array.from(map, ([key, p]) => [key, p / evidence]));
  return {
    evidence,
    explaining: scaled(explaining),
    joint: scaled(joint),
    leaks: leaks.map((p) => p / evidence),
    links: links.map(scaled),
  };
}
