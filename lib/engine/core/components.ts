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
  /** The same given two suspects; dearer, as it takes a run of its own. */
  readonly givenBoth: (i: number, j: number) => Float64Array;
}

/** Sets are added until this much is covered. */
const ENOUGH = 0.985;
/** Pairs below this are left to the rest. */
const SMALLEST_PAIR = 0.02;
/** Conditionings that a pair's run of its own counts for. */
const PAIR_COST = 4;
/** A rest below this is rounding. */
const SMALLEST_REST = 1e-12;

/**
 * The empty set, the likeliest singles and pairs, and the rest; their mixture gives the exact marginals.
 *
 * The sets' rows are exact; the rest follows by total probability, held within 0..1 against rounding.
 * Sets beyond `limit`, or beyond what `conditionings` can pay for, are left to the rest.
 */
export function gainComponents(source: ComponentSource, limit: number, conditionings: number): Component[] {
  const { marginals, silent, none, singles, pairs, given, givenBoth } = source;
  const ranked = [
    ...Array.from(singles, (probability, i) => ({ set: [i], probability })),
    ...pairs.map(({ i, j, probability }) => ({ set: [i, j], probability })),
  ]
    .filter(({ set, probability }) => probability > 0 && (set.length === 1 || probability > SMALLEST_PAIR))
    .sort((a, b) => b.probability - a.probability);
  const chosen: Component[] = [{ set: [], kind: "none", probability: none, marginals: silent }];
  let covered = none;
  let spent = 0;
  for (const { set, probability } of ranked) {
    if (covered >= ENOUGH || chosen.length > limit) break;
    const [first, second] = set as [number, number?];
    const cost = second === undefined ? 1 : PAIR_COST;
    if (spent + cost > conditionings) continue;
    spent += cost;
    const row = second === undefined ? given(first) : givenBoth(first, second);
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
