import type { ForecastSums } from "./forecasts.ts";

/** Cases on one car of the road, each played by every policy. */
export interface PolicyJob {
  readonly kind: "policies";
  readonly seed: number;
  readonly cars: number;
}

/** Cases on one car of the road whose forecasts are noted; `perturbed` lets the world differ from the knowledge. */
export interface CalibrationJob {
  readonly kind: "calibration";
  readonly seed: number;
  readonly cars: number;
  readonly perturbed: boolean;
}

/** Cases that start from given faults. */
export interface ReachJob {
  readonly kind: "reach";
  readonly seed: number;
  readonly faults: readonly string[];
  /** Cases for each fault. */
  readonly cases: number;
  /** Draw what happened to the car lately; else nothing did. */
  readonly lately: boolean;
}

/** Small random instances against their optimum. */
export interface OptimumJob {
  readonly kind: "optimum";
  readonly seeds: readonly number[];
}

/** Cases of which one answer is turned round. */
export interface MisreadJob {
  readonly kind: "misread";
  readonly seed: number;
  readonly cars: number;
}

/** What a worker thread can be given to do. */
export type SimulationJob = PolicyJob | CalibrationJob | ReachJob | OptimumJob | MisreadJob;

/** Cases of one slice played by one policy under one stop rule: minutes of each, and sums of the rest. */
export interface PlayedCases {
  readonly stop: string;
  readonly policy: string;
  /** True when these are every fourth case only: what is dear to play is played on them, and set beside the same ones. */
  readonly quarter: boolean;
  /** Units: minutes to the verdict. */
  readonly minutes: readonly number[];
  readonly checks: number;
  readonly setUpChanges: number;
  readonly wrong: number;
  readonly referred: number;
  readonly sure: number;
  /** Of those that were sure. */
  readonly sureAndWrong: number;
  readonly repairMinutes: number;
}

/** One slice of the comparison: every way of searching it, and the forecasts of the shipped one. */
export interface PolicyResult {
  readonly played: readonly PlayedCases[];
  readonly forecasts: ForecastSums;
}

/** A case that ended with another part. */
export interface ReachMiss {
  readonly seed: number;
  readonly complaint: string;
  /** `fault@place` */
  readonly hidden: string;
  /** `part@place` */
  readonly named: string;
  readonly chance: number;
  readonly minutes: number;
  readonly why: string;
}

/** Cases from one fault. */
export interface ReachRow {
  readonly fault: string;
  readonly cases: number;
  /** What is named, proven or renewed along mends a fault that really fired on the complaint. */
  readonly right: number;
  /** Of these, the part named is the very one at the very place. */
  readonly exact: number;
  /** The right part is named or among the repairs that the verdict gives an order of. */
  readonly amongRepairs: number;
  readonly minutes: number;
  readonly misses: readonly ReachMiss[];
}

/** Cost of one way of searching one instance, over the optimum's. */
export interface OptimumRow {
  readonly way: string;
  readonly ratio: number;
}

/** One case: the strongest measure of any answer, with all answers right and with one turned round. */
export interface MisreadRow {
  readonly checks: number;
  readonly right: { readonly surprise: number; readonly conflict: number };
  /** Jensen's measure of all answers. */
  readonly conflict: number;
  readonly turned?: {
    readonly to: "present" | "absent";
    /** It changes who leads. */
    readonly misleads: boolean;
    /** Place of the turned answer when answers are ordered by each measure; 1 is named first. */
    readonly rankBySurprise: number;
    readonly rankByConflict: number;
    readonly surprise: number;
    readonly strongestConflict: number;
    readonly conflict: number;
  };
}
