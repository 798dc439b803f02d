import type { Answer } from "../answers.ts";
import { evidenceOf } from "../assemble.ts";
import { run } from "../core/index.ts";
import { type Gathered, gatherAnswers } from "../gathered.ts";
import type { Grounded } from "../ground.ts";

/** A weighing without explaining sets: a small part of the work, for asking "what if" hundreds of times. */
export interface QuickLook {
  /** Natural log of the probability of the answers; comparable between sets of answers. */
  readonly logLikelihood: number;
  /** Chance that each suspect is there. */
  readonly present: Float64Array;
  /** Chance that each suspect explains the complaint (or the findings; or is there, with nothing to explain). */
  readonly explains: Float64Array;
}

/** Weighs answers quickly; the same chances as `weigh`, up to `maxCost` of the core. */
export function quickLook(grounded: Grounded, answers: readonly Answer[]): QuickLook {
  return quickLookAt(grounded, gatherAnswers(grounded, answers));
}

/** As `quickLook`, of answers that are sorted already. */
export function quickLookAt(grounded: Grounded, gathered: Gathered, maxCost = MOST_COST): QuickLook {
  const { evidence, targets, logScale } = evidenceOf(grounded, gathered);
  const result = run(evidence, { maxCost });
  return {
    logLikelihood: result.logEvidence + logScale,
    present: result.marginals,
    explains: targets.length > 0 ? result.anyFired(targets) : result.marginals,
  };
}

/** Index of the suspect that explains most; the first of those that are alike. */
export function leaderOf({ explains }: QuickLook): number {
  return explains.reduce((best, p, i) => (p > (explains[best] ?? 0) ? i : best), 0);
}

/** Beyond this the weakest links are cut: hundreds of dear runs would take minutes. */
const MOST_COST = 1e5;
