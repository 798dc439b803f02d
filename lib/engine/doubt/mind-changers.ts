import type { Answer } from "../answers.ts";
import { parseFinding } from "../finding-id.ts";
import type { Grounded } from "../ground.ts";
import type { ProposedCheck } from "../propose.ts";
import { rankingRows } from "../ranking-rows.ts";
import { repairOfSuspect } from "../repair-cost.ts";
import type { Weighed } from "../weigh.ts";
import { leaderOf, quickLook } from "./quick-look.ts";

/** A result that would put another suspect in front. */
export interface MindChanger {
  readonly check: ProposedCheck;
  /** What would have to be found: everything that the check settles. */
  readonly answers: readonly Answer[];
  /** Chance of this very result as things stand. */
  readonly probability: number;
  /** Who would lead then: `fault@place`. */
  readonly leader: string;
  /** Its chance to explain the complaint then. */
  readonly explains: number;
}

/** Checks and questions that are looked at. */
const LOOKED_AT = 60;
/** Results more seldom than this are not worth a thought. */
const RAREST = 0.002;

/**
 * Results of the proposed checks that would overturn the ranking, most probable first.
 *
 * Looked at are, for each check, nothing found, and each finding in each grade with the others not found. Another place of
 * the leader's own line, or another fault of the same part there, is no change of mind. A check's chances are exact; a
 * question's are those that chose it. What happened to the car lately is left out, as it moves the priors.
 */
export function mindChangers(
  grounded: Grounded,
  answers: readonly Answer[],
  weighed: Weighed,
  proposed: readonly ProposedCheck[],
): MindChanger[] {
  if (weighed.target === "none") return [];
  const [row] = rankingRows(grounded, weighed);
  if (row === undefined) return [];
  const same = new Set(row.suspects.map(({ suspect }) => repairOfSuspect(suspect)));
  const before = quickLook(grounded, answers).logLikelihood;
  const out: MindChanger[] = [];
  for (const check of proposed.slice(0, LOOKED_AT)) {
    if (check.kind === "question" && movesPriors(grounded, check)) continue;
    for (const found of resultsOf(check)) {
      const after = quickLook(grounded, [...answers, ...found]);
      const exact = Math.min(1, Math.exp(after.logLikelihood - before));
      const yes = found[0]?.state === "present" ? check.yes : 1 - (check.yes ?? 0);
      const probability = check.yes === undefined ? exact : (yes ?? 0);
      if (probability < RAREST) continue;
      const leader = leaderOf(after);
      const suspect = grounded.suspects[leader];
      if (suspect === undefined || same.has(repairOfSuspect(suspect))) continue;
      const explains = after.explains[leader] ?? 0;
      out.push({ check, answers: found, probability, leader: suspect.id, explains });
    }
  }
  return out.sort((a, b) => b.probability - a.probability || (a.check.id < b.check.id ? -1 : 1));
}

function movesPriors(grounded: Grounded, check: ProposedCheck): boolean {
  return check.settles.some((s) => parseFinding(grounded.knowledge, s.finding).kind === "context");
}

/** Nothing found, and each finding in each grade with the others not found. */
function resultsOf(check: ProposedCheck): Answer[][] {
  const by = check.kind === "check" ? "check" : "report";
  const none = check.settles.map((s): Answer => ({ finding: s.finding, state: "absent", by }));
  const found = check.settles.flatMap(({ finding, levels }, k) =>
    levels.map((level) =>
      none.with(k, { finding, state: "present", by, ...(levels.length > 1 ? { level } : {}) }),
    ),
  );
  return [none, ...found];
}
