import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { weightOf } from "../../knowledge/strengths.ts";
import { standardNormal } from "../../maths/standard-normal.ts";
import { movable, moved, movedGrades } from "../movable.ts";

/**
 * A world that differs from the knowledge as the knowledge's own spreads say that it may: every strength moves in log-odds
 * by its spread times a normal number, all grades of a link by the same one.
 *
 * Features of showings have the spread of the nearest frequency word, leaks the one stated for them (none: they stay).
 * Priors are no weights of their own here, they follow from lives: see `perturbedWorld`.
 */
export function perturbedKnowledge(knowledge: Knowledge, uniform: () => number): Knowledge {
  const spreadOf = (p: number): number => weightOf(p, knowledge.scale.words, "")?.spread ?? 0;
  const leakSpread = knowledge.doubt?.spreads.leaks.spread ?? 0;
  return {
    ...knowledge,
    complaints: knowledge.complaints.map((complaint) => ({
      ...complaint,
      leak: moved(movable(complaint.leak, leakSpread), standardNormal(uniform)),
    })),
    observations: knowledge.observations.map((observation) => {
      const by = standardNormal(uniform);
      return { ...observation, leak: observation.leak.map((p) => moved(movable(p, leakSpread), by)) };
    }),
    faults: knowledge.faults.map((fault) => ({
      ...fault,
      shows: fault.shows.map((showing) => ({
        ...showing,
        strength: {
          ...showing.strength,
          p: moved(movable(showing.strength.p, showing.strength.spread), standardNormal(uniform)),
        },
        features: Object.fromEntries(
          Object.entries(showing.features).map(([id, p]) => [
            id,
            moved(movable(p, spreadOf(p)), standardNormal(uniform)),
          ]),
        ),
      })),
      links: fault.links.map((link) => {
        const levels = link.levels.map(({ p, spread }) => movable(p, spread));
        const now = movedGrades(levels, standardNormal(uniform));
        return { ...link, levels: link.levels.map((level, k) => ({ ...level, p: now[k] ?? level.p })) };
      }),
    })),
  };
}
