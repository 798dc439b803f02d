/** One finding seen to be absent: P(absent | f) = leakQ * product of q over the parents that are present. */
export interface NegativeFactor {
  /** Chance that no cause outside the model shows the finding. */
  readonly leakQ: number;
  readonly parents: Int32Array;
  /** Chance, for each parent, that it stays silent although present. */
  readonly q: Float64Array;
}

/** One finding seen to be present: a noisy-OR of its parents and a leak. */
export interface PositiveBit {
  /** Chance that a cause outside the model shows the finding; held within LEAK_FLOOR..LEAK_CEILING. */
  readonly leak: number;
  readonly parents: Int32Array;
  /** Chance, for each parent, that it shows the finding when present; held to STRENGTH_CEILING. */
  readonly w: Float64Array;
  /** An unreliable answer: [P(answer | finding absent), P(answer | finding present)]. */
  readonly soft?: readonly [number, number];
}

/** What is known: a prior for each suspect, and the findings that were answered. */
export interface Evidence {
  readonly prior: Float64Array;
  readonly negatives: readonly NegativeFactor[];
  readonly positives: readonly PositiveBit[];
}

/** Limits on the work done; the defaults suit a phone. */
export interface CoreOptions {
  /** Largest plan cost before links are cut (see planCost); at most MAX_COST. */
  readonly maxCost?: number;
  /** Largest number of conditionings spent on pairs and on components. */
  readonly maxConditionings?: number;
}

/** Leaks below this are raised to it: a leak of 0 would make contradicting answers impossible. */
export const LEAK_FLOOR = 1e-6;
/** Leaks above this are lowered to it. */
export const LEAK_CEILING = 0.999;
/** Link strengths above this are lowered to it: a certain link divides by zero in the explaining sets. */
export const STRENGTH_CEILING = 0.99;
/** Plan cost beyond which links are cut, unless the caller sets another. */
export const DEFAULT_MAX_COST = 8e5;
/** No plan dearer than this is run, whatever the caller asks: its tables would not fit into memory. */
export const MAX_COST = 5e7;
