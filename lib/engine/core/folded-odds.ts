import { CornerwiseError } from "../../errors.ts";
import type { NegativeFactor } from "./evidence.ts";

/** Suspects after the absent findings: still independent, each with its own odds. */
export interface FoldedOdds {
  /** P(present | absent findings). */
  readonly alpha: Float64Array;
  /** 1 - alpha, computed by division so that small values keep their digits. */
  readonly beta: Float64Array;
  /** Natural log of P(absent findings). */
  readonly logFactor: number;
}

/**
 * Folds absent findings into the odds of their parents; exact, linear in the number of links.
 *
 * Errors: impossible-evidence when an absent finding cannot be absent.
 */
export function foldedOdds(prior: Float64Array, negatives: readonly NegativeFactor[]): FoldedOdds {
  const n = prior.length;
  // In logs: some hundred absent findings on one suspect would underflow a plain product.
  const logQ = new Float64Array(n);
  let logFactor = 0;
  for (const { leakQ, parents, q } of negatives) {
    logFactor += Math.log(leakQ);
    for (let p = 0; p < parents.length; p++) {
      const parent = parents[p] as number;
      logQ[parent] = (logQ[parent] as number) + Math.log(q[p] as number);
    }
  }
  const alpha = new Float64Array(n);
  const beta = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const present = (prior[i] as number) * Math.exp(logQ[i] as number);
    const absent = 1 - (prior[i] as number);
    const total = present + absent;
    if (total > 0) {
      alpha[i] = present / total;
      beta[i] = absent / total;
      logFactor += Math.log(total);
    } else {
      // A suspect that is certain: the product may underflow, its logarithm does not.
      alpha[i] = 1;
      logFactor += logQ[i] as number;
    }
  }
  if (!Number.isFinite(logFactor)) throw impossibleEvidence("absent");
  return { alpha, beta, logFactor };
}

/** The error for answers that no cause and no leak can produce. */
export function impossibleEvidence(kind: "absent" | "present" | "suspect"): CornerwiseError {
  const what =
    kind === "suspect"
      ? "A suspect that has probability 0 was taken as present."
      : `The findings answered as ${kind} have probability 0: no cause and no leak can produce them.`;
  return new CornerwiseError(
    "impossible-evidence",
    `${what} Check the answers, or give the findings a leak.`,
    {
      kind,
    },
  );
}
