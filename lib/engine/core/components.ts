/** Two suspects that both fired on the targets, alone. */
export interface ExplainingPair {
  readonly i: number;
  readonly j: number;
  readonly probability: number;
}

/** One value of "what explains the targets", with every suspect's probability given it. */
export interface Component {
  readonly set: readonly number[];
  readonly kind: "none" | "set" | "rest";
  readonly probability: number;
  /** P(suspect present | E, this component); suspects are taken as independent given it. */
  readonly marginals: Float64Array;
}

/** What the mixture is made from. */
export interface ComponentSource {
  readonly marginals: Float64Array;
  /** P(suspect present | everything else, targets silent). */
  readonly silent: Float64Array;
  readonly none: number;
  readonly singles: Float64Array;
  readonly pairs: readonly ExplainingPair[];
  /** P(each suspect present | targets silent, suspect i present). */
  readonly given: (i: number) => Float64Array;
}

/** Sets are added until this much is covered. */
const ENOUGH = 0.985;
/** Pairs below this are left to the rest. */
const SMALLEST_PAIR = 0.02;
/** A rest below this is rounding. */
const SMALLEST_REST = 1e-12;

/**
 * The empty set, the likeliest singles and pairs, and the rest; their mixture gives the exact marginals.
 *
 * None and singles are exact. A pair takes its first suspect's row with the second set to 1; the rest follows by
 * total probability, held within 0..1.
 */
export function gainComponents(source: ComponentSource, limit: number, conditionings: number): Component[] {
  const { marginals, silent, none, singles, pairs, given } = source;
  const ranked = [
    ...Array.from(singles, (probability, i) => ({ set: [i], probability })),
    ...pairs.map(({ i, j, probability }) => ({ set: [i, j], probability })),
  ]
    .filter(({ set, probability }) => probability > 0 && (set.length === 1 || probability > SMALLEST_PAIR))
    .sort((a, b) => b.probability - a.probability);
  const chosen: Component[] = [{ set: [], kind: "none", probability: none, marginals: silent }];
  let covered = none;
  const rows = new Set<number>();
  for (const { set, probability } of ranked) {
    if (covered >= ENOUGH || chosen.length > limit) break;
    const [first, second] = set as [number, number?];
    if (!rows.has(first) && rows.size >= conditionings) continue;
    rows.add(first);
    let row = given(first);
    if (second !== undefined) {
      row = row.slice();
      row[second] = 1;
    }
    chosen.push({ set, kind: "set", probability, marginals: row });
    covered += probability;
  }
  const left = 1 - covered;
  if (left > SMALLEST_REST) {
    const rest = marginals.map((marginal, i) => {
      let mass = marginal;
      for (const component of chosen) mass -= component.probability * (component.marginals[i] as number);
      return Math.min(1, Math.max(0, mass / left));
    });
    chosen.push({ set: [], kind: "rest", probability: left, marginals: rest });
  }
  return chosen;
}
