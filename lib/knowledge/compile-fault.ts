import type { KnowledgeProblem } from "./problems.ts";
import type { Authored } from "./schema/authored.ts";
import type { Strength } from "./schema/common.ts";
import type { CompiledFault, CompiledObservation, Weight } from "./schema/compiled.ts";
import { weightOf } from "./strengths.ts";

type AuthoredFault = Authored["faults"][number];
type Observations = ReadonlyMap<string, CompiledObservation>;

/**
 * One fault with its profiles folded in and every strength as a number.
 *
 * Errors  none thrown; grades that do not fit are added to `problems`.
 */
export function compileFault(
  fault: AuthoredFault,
  authored: Authored,
  observations: Observations,
  problems: KnowledgeProblem[],
): CompiledFault {
  const { words } = authored.scale;
  const complain = (path: string, what: string, mend: string) => {
    problems.push({ file: `faults/${fault.id}.json`, path, what, mend });
  };
  const weigh = (strength: Strength, basis: string, path: string): Weight[] => {
    const weight = weightOf(strength, words, basis);
    if (weight === undefined) complain(path, "no such frequency word", "Use a word of scale.json.");
    return weight === undefined ? [] : [weight];
  };

  const shows = fault.shows.flatMap((showing, i) => {
    const path = `shows.${i}`;
    const basis = showing.basis ?? fault.basis;
    const profile = authored.profiles.find((candidate) => candidate.id === showing.profile);
    const features: Record<string, number> = {};
    for (const [key, strength] of Object.entries({ ...profile?.features, ...showing.features })) {
      for (const weight of weigh(strength, basis, `${path}.features.${key}`)) features[key] = weight.p;
    }
    return weigh(showing.strength, basis, `${path}.strength`).map((strength) => ({
      complaint: showing.complaint,
      strength,
      features,
    }));
  });

  const links = Object.entries(fault.links)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([observation, link]) => {
      const graded = typeof link === "object" && "levels" in link;
      const basis = (graded ? link.basis : undefined) ?? fault.basis;
      const strengths: readonly Strength[] = graded ? link.levels : [link];
      const levels = strengths.flatMap((strength) => weigh(strength, basis, `links.${observation}`));
      const grades = observations.get(observation)?.levels ?? [];
      if (grades.length !== strengths.length) {
        complain(
          `links.${observation}`,
          `${strengths.length} strength(s) given for ${grades.length} grade(s) (${grades.join(", ")})`,
          grades.length === 1
            ? "Give one plain strength."
            : `Give {"levels": [...]} with ${grades.length} strengths, weakest grade first.`,
        );
      }
      return { observation, levels };
    });

  const decisive = fault.decisive.flatMap((entry, i) => {
    const [observation = "", grade] = entry.split(":");
    const grades = observations.get(observation)?.levels ?? [];
    const level = grade === undefined && grades.length === 1 ? 0 : grades.indexOf(grade ?? "");
    if (level < 0 || (grade !== undefined && grades.length === 1)) {
      complain(
        `decisive.${i}`,
        `"${entry}" does not name a grade that "${observation}" has`,
        grades.length === 1
          ? `Write "${observation}": it is a plain yes or no.`
          : `Write one of: ${grades.map((name) => `"${observation}:${name}"`).join(", ")}.`,
      );
      return [];
    }
    return [{ observation, level }];
  });

  const { shows: _shows, links: _links, decisive: _decisive, ...rest } = fault;
  return { ...rest, shows, links, decisive };
}
