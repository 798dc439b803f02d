import type { LintFinding, LintRule } from "./rule.ts";
import { canBeAt, type LintWorld } from "./world.ts";

/** A worked case can happen, and every complaint has one. */
export const workedCasesPossible: LintRule = {
  name: "worked-cases-possible",
  about:
    "The fault of a worked case can be at that place on its car, its observations can be made there, and every complaint is told in some worked case.",
  check: (world) => [...impossible(world), ...untold(world)],
};

function impossible(world: LintWorld): LintFinding[] {
  const found: LintFinding[] = [];
  for (const { id, car, findings, truth } of world.authored.workedCases) {
    const say = (message: string, mend: string) => {
      found.push({ record: `worked-cases/${id}.json`, message, mend });
    };
    if (!canBeAt(world, truth.fault, truth.place, car)) {
      say(`${truth.fault} cannot be at ${truth.place} on its car`, "Mend the car, the fault or the place.");
    }
    for (const finding of findings) {
      const [head = "", place] = finding.id.split("@");
      const observation = place === undefined ? undefined : world.observations.get(head);
      if (observation === undefined || place === undefined) continue;
      if (!observation.places.includes(place)) {
        say(`"${head}" is not seen at ${place}`, `Use one of: ${observation.places.join(", ")}.`);
      }
      if (finding.level !== undefined && !observation.levels.includes(finding.level)) {
        say(`"${head}" has no grade "${finding.level}"`, `Use one of: ${observation.levels.join(", ")}.`);
      }
    }
  }
  return found;
}

function untold({ knowledge, authored }: LintWorld): LintFinding[] {
  const told = new Set(authored.workedCases.flatMap((worked) => worked.findings.map(({ id }) => id)));
  return knowledge.complaints
    .filter(({ id }) => !told.has(id))
    .map(({ id }) => ({
      record: `complaints/${id}.json`,
      message: "no worked case tells of it",
      mend: "Write one into worked-cases/, so that a new version shows what it makes of it.",
    }));
}
