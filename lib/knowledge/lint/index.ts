import type { Authored } from "../schema/authored.ts";
import type { Knowledge } from "../schema/compiled.ts";
import { checkCautions } from "./check-cautions.ts";
import { dangerousHasStop } from "./dangerous-has-stop.ts";
import { decisiveProves } from "./decisive-proves.ts";
import { demoCasesPossible } from "./demo-cases-possible.ts";
import { applyExceptions, type LintException } from "./exceptions.ts";
import { faultFindable } from "./fault-findable.ts";
import { faultHasDecisive } from "./fault-has-decisive.ts";
import { faultsToldApart } from "./faults-told-apart.ts";
import { featuresFit } from "./features-fit.ts";
import { findingIdsUnique } from "./finding-ids-unique.ts";
import { findingLearnable } from "./finding-learnable.ts";
import { gradesFall } from "./grades-fall.ts";
import { idsResolve } from "./ids-resolve.ts";
import { inseparableNeeded } from "./inseparable-needed.ts";
import { layTries } from "./lay-tries.ts";
import { layWords } from "./lay-words.ts";
import { layoutsFit } from "./layouts-fit.ts";
import { limitsFit } from "./limits-fit.ts";
import { logicValues } from "./logic-values.ts";
import { namesUnique } from "./names-unique.ts";
import { noOrphans } from "./no-orphans.ts";
import { observationHasFault } from "./observation-has-fault.ts";
import { ordersFit } from "./orders-fit.ts";
import { pairedParts } from "./paired-parts.ts";
import type { LintProblem, LintRule } from "./rule.ts";
import { setUpCautions } from "./set-up-cautions.ts";
import { setUpsComplete } from "./set-ups-complete.ts";
import { severityItem } from "./severity-item.ts";
import { sourcesExist } from "./sources-exist.ts";
import { workedCasesPossible } from "./worked-cases-possible.ts";
import { lintWorld } from "./world.ts";

/** Every rule, in the order of the report. */
export const LINT_RULES: readonly LintRule[] = [
  idsResolve,
  sourcesExist,
  findingIdsUnique,
  namesUnique,
  noOrphans,
  logicValues,
  featuresFit,
  gradesFall,
  setUpsComplete,
  pairedParts,
  severityItem,
  dangerousHasStop,
  checkCautions,
  setUpCautions,
  observationHasFault,
  findingLearnable,
  faultFindable,
  faultHasDecisive,
  decisiveProves,
  faultsToldApart,
  inseparableNeeded,
  layWords,
  layTries,
  layoutsFit,
  ordersFit,
  limitsFit,
  demoCasesPossible,
  workedCasesPossible,
];

/** What the lint found, rule by rule; empty when the knowledge makes sense. */
export type LintReport = readonly LintProblem[];

/**
 * Whether the knowledge's records make sense together.
 *
 * Exceptions take out the problems that are right all the same; one that takes out nothing is a problem itself.
 */
export function lintKnowledge(
  knowledge: Knowledge,
  authored: Authored,
  exceptions: readonly LintException[] = [],
): LintReport {
  const world = lintWorld(knowledge, authored);
  const problems = LINT_RULES.flatMap((rule) =>
    rule.check(world).map((finding) => ({ rule: rule.name, ...finding })),
  );
  return applyExceptions(problems, exceptions);
}
