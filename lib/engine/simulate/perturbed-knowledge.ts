import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { logOdds, weightOf } from "../../knowledge/strengths.ts";
import { standardNormal } from "../../maths/standard-normal.ts";

/**
 * A world that differs from the knowledge as the knowledge's own spreads say that it may: every strength moves in log-odds
 * by its spread times a normal number, all grades of a link by the same one.
 *
 * Features of showings have the spread of the nearest frequency word. Priors and leaks stay: their spread is not stated.
 */
export function perturbedKnowledge(knowledge: Knowledge, uniform: () => number): Knowledge {
  const moved = (p: number, spread: number, by: number): number =>
    1 / (1 + Math.exp(-(logOdds(p) + spread * by)));
  const spreadOf = (p: number): number => weightOf(p, knowledge.scale.words, "")?.spread ?? 0;
  return {
    ...knowledge,
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
