import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { logOdds, weightOf } from "../../knowledge/strengths.ts";
import { logistic } from "../../maths/logistic.ts";
import { standardNormal } from "../../maths/standard-normal.ts";

/**
 * A world that differs from the knowledge as the knowledge's own spreads say that it may: every strength moves in log-odds
 * by its spread times a normal number, all grades of a link by the same one.
 *
 * Features of showings have the spread of the nearest frequency word, leaks the one stated for them (none: they stay).
 * Priors are no weights of their own here, they follow from lives: see `perturbedWorld`.
 */
export function perturbedKnowledge(knowledge: Knowledge, uniform: () => number): Knowledge {
  const moved = (p: number, spread: number, by: number): number => logistic(logOdds(p) + spread * by);
  const spreadOf = (p: number): number => weightOf(p, knowledge.scale.words, "")?.spread ?? 0;
  const leakSpread = knowledge.doubt?.spreads.leaks.spread ?? 0;
  return {
    ...knowledge,
    complaints: knowledge.complaints.map((complaint) => ({
      ...complaint,
      leak: moved(complaint.leak, leakSpread, standardNormal(uniform)),
    })),
    observations: knowledge.observations.map((observation) => {
      const by = standardNormal(uniform);
      return { ...observation, leak: observation.leak.map((p) => moved(p, leakSpread, by)) };
    }),
    faults: knowledge.faults.map((fault) => ({
      ...fault,
      shows: fault.shows.map((showing) => ({
        ...showing,
        strength: {
          ...showing.strength,
          p: moved(showing.strength.p, showing.strength.spread, standardNormal(uniform)),
        },
        features: Object.fromEntries(
          Object.entries(showing.features).map(([id, p]) => [
            id,
            moved(p, spreadOf(p), standardNormal(uniform)),
          ]),
        ),
      })),
      links: fault.links.map((link) => {
        const by = standardNormal(uniform);
        let before = 1;
        return {
          ...link,
          levels: link.levels.map((level) => {
            // Grades with different spreads must not cross.
            before = Math.min(before, moved(level.p, level.spread, by));
            return { ...level, p: before };
          }),
        };
      }),
    })),
  };
}
