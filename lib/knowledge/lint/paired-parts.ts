import type { LintFinding, LintRule } from "./rule.ts";

/** Parts that are renewed together can be renewed together. */
export const pairedParts: LintRule = {
  name: "paired-parts",
  about:
    "A paired part is there, at an overlapping place, and has another side when the pair is across the car.",
  check: (world) => {
    const sideOf = new Map(world.knowledge.places.places.map((place) => [place.id, place.side]));
    const found: LintFinding[] = [];
    for (const fault of world.knowledge.faults) {
      for (const pair of fault.remedy.paired) {
        const say = (message: string, mend: string) => {
          found.push({ record: `faults/${fault.id}.json`, message: `remedy.paired: ${message}`, mend });
        };
        const part = world.parts.get(pair.part);
        if (part === undefined) {
          say(`there is no part "${pair.part}"`, "Mend the id.");
          continue;
        }
        const sides = new Set(part.places.map((place) => sideOf.get(place)));
        if (pair.where !== "same-place" && !(sides.has("left") && sides.has("right"))) {
          say(
            `"${pair.part}" has no ${pair.where} (it is at ${part.places.join(", ")})`,
            'Use "same-place".',
          );
        }
        const near = world
          .placesOf(fault)
          .some((at) => part.places.some((place) => world.overlap(at, place)));
        if (!near) say(`"${pair.part}" is nowhere near the fault's part`, "Name a part at the same place.");
      }
    }
    return found;
  },
};
