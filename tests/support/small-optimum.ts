import type { SmallInstance } from "./small-instance.ts";

/** What a search over a small instance is expected to cost, all told: minutes of checks, set-ups, repairs, handing over. */
export interface SmallCosts {
  /** The least that any way of searching can cost. */
  optimum(): number;
  /** What a way of searching costs: it says which check is next, or which repairs to make. */
  of(way: Way): number;
}

/** Results so far (-1 not made, 0 absent, 1 present) and set-up -> the next check, or repairs in their order. */
export type Way = (
  results: readonly number[],
  setUp: number,
) => { readonly check: number } | { readonly repairs: readonly number[] };

/**
 * Exact costs of a small instance, by enumeration: every set of faults, every set of them that fired on the complaint, and
 * whether something else did. Shares no code with the engine.
 */
export function smallCosts(instance: SmallInstance): SmallCosts {
  const { prior, shows, leak, checks, change, repairMinutes, costs } = instance;
  const n = prior.length;
  const sets = 1 << n;
  // firedGiven[faults][fired]: chance of those faults being there and just these firing.
  const weight = new Float64Array(sets);
  const fired: Float64Array[] = [];
  let evidence = 0;
  for (let present = 0; present < sets; present++) {
    let p = 1;
    for (let i = 0; i < n; i++) p *= present & (1 << i) ? prior[i]! : 1 - prior[i]!;
    const own = new Float64Array(sets);
    for (let some = present; ; some = (some - 1) & present) {
      let q = p;
      for (let i = 0; i < n; i++) if (present & (1 << i)) q *= some & (1 << i) ? shows[i]! : 1 - shows[i]!;
      own[some] = q;
      if (some === 0) break;
    }
    fired.push(own);
    for (let some = 0; some < sets; some++) weight[present]! += own[some]! * (some === 0 ? leak : 1);
    evidence += weight[present]!;
  }
  const shown = checks.map(({ strengths, leak: own }) =>
    Float64Array.from({ length: sets }, (_, present) => {
      let silent = 1 - own;
      for (let i = 0; i < n; i++) if (present & (1 << i)) silent *= 1 - strengths[i]!;
      return 1 - silent;
    }),
  );
  const chanceOf = (results: readonly number[], present: number): number =>
    results.reduce(
      (p, r, j) => (r < 0 ? p : p * (r === 1 ? shown[j]![present]! : 1 - shown[j]![present]!)),
      1,
    );
  /** Joint chance of the results and of the complaint not being cured by some repairs. */
  const uncured = (results: readonly number[], repaired: number): number => {
    let sum = 0;
    for (let present = 0; present < sets; present++) {
      const seen = chanceOf(results, present);
      for (let some = present; ; some = (some - 1) & present) {
        const cured = some !== 0 && (some & ~repaired) === 0 ? 1 - leak : 0;
        const complained = some === 0 ? leak : 1;
        sum += seen * fired[present]![some]! * (complained - cured);
        if (some === 0) break;
      }
    }
    return sum;
  };
  /** Work that is left to whoever it is handed over to: every cause that fired and was not repaired. */
  const leftToMend = (results: readonly number[], repaired: number): number => {
    let sum = 0;
    for (let present = 0; present < sets; present++) {
      const seen = chanceOf(results, present);
      for (let some = present; some > 0; some = (some - 1) & present) {
        for (let i = 0; i < n; i++) {
          if (some & ~repaired & (1 << i)) sum += seen * fired[present]![some]! * repairMinutes[i]!;
        }
      }
    }
    return sum;
  };
  const handOver = (results: readonly number[], repaired: number): number =>
    uncured(results, repaired) * costs.refer.minutes + leftToMend(results, repaired);
  const mass = (results: readonly number[]): number => uncured(results, 0);
  const repairAll = (results: readonly number[], order: readonly number[]): number => {
    let cost = 0;
    let done = 0;
    for (const repair of order) {
      cost += uncured(results, done) * repairMinutes[repair]!;
      done |= 1 << repair;
    }
    return cost + handOver(results, done);
  };
  const bestRepairs = (results: readonly number[]): number => {
    const value = new Float64Array(sets);
    for (let done = sets - 1; done >= 0; done--) {
      const left = uncured(results, done);
      value[done] = handOver(results, done);
      for (let i = 0; i < n; i++) {
        if (!(done & (1 << i)))
          value[done] = Math.min(value[done]!, left * repairMinutes[i]! + value[done | (1 << i)]!);
      }
    }
    return value[0]!;
  };
  const key = (results: readonly number[], setUp: number): string => `${results.join(",")}/${setUp}`;
  const step = (
    results: readonly number[],
    setUp: number,
    check: number,
    then: (results: readonly number[], setUp: number) => number,
  ): number => {
    const { minutes, setUp: needed } = checks[check]!;
    const cost = mass(results) * (minutes + change[setUp]![needed]!);
    return [0, 1].reduce((sum, r) => sum + then(results.with(check, r), needed), cost);
  };
  const start = checks.map(() => -1);
  return {
    optimum: () => {
      const known = new Map<string, number>();
      const terminal = new Map<string, number>();
      const best = (results: readonly number[], setUp: number): number => {
        const at = key(results, setUp);
        const kept = known.get(at);
        if (kept !== undefined) return kept;
        const bare = results.join(",");
        let least = terminal.get(bare) ?? bestRepairs(results);
        terminal.set(bare, least);
        results.forEach((r, check) => {
          if (r < 0) least = Math.min(least, step(results, setUp, check, best));
        });
        known.set(at, least);
        return least;
      };
      return best(start, 0) / evidence;
    },
    of: (way) => {
      const cost = (results: readonly number[], setUp: number): number => {
        const next = way(results, setUp);
        return "check" in next ? step(results, setUp, next.check, cost) : repairAll(results, next.repairs);
      };
      return cost(start, 0) / evidence;
    },
  };
}
