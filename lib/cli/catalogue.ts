import type { Knowledge } from "../knowledge/schema/compiled.ts";

/** One thing that can be listed: a finding, a part or a check. */
export interface CatalogueItem {
  readonly id: string;
  readonly name: string;
  readonly otherNames: readonly string[];
  /** Short facts beside it: kind, grades, places, minutes ... */
  readonly notes: readonly string[];
}

/** Everything that can be answered, by the id that an answer names it with. */
export function findingItems(knowledge: Knowledge): CatalogueItem[] {
  const complaints = knowledge.complaints.map((complaint) => ({
    ...named(complaint),
    notes: ["complaint", complaint.aspect],
  }));
  const features = knowledge.features.flatMap((feature) =>
    feature.complaints.map((complaint) => ({
      ...named(feature),
      id: `${complaint}:${feature.id}`,
      notes: ["feature", `of ${complaint}`],
    })),
  );
  const observations = knowledge.observations.map((observation) => ({
    ...named(observation),
    notes: [
      "observation",
      ...(observation.levels.length > 1 ? [`grades: ${observation.levels.join(", ")}`] : []),
      `at: ${observation.places.join(", ")}`,
    ],
  }));
  const contexts = knowledge.contexts.map((context) => ({ ...named(context), notes: ["context"] }));
  return [...complaints, ...features, ...observations, ...contexts];
}

/** Every part with its faults. */
export function partItems(knowledge: Knowledge): CatalogueItem[] {
  return knowledge.parts.map((part) => {
    const faults = knowledge.faults.filter((fault) => fault.part === part.id);
    return {
      ...named({ ...part, otherNames: [...part.otherNames, ...part.generalNames] }),
      notes: [
        part.group,
        `at: ${part.places.join(", ")}`,
        `faults: ${faults.map((fault) => fault.id).join(", ") || "none"}`,
      ],
    };
  });
}

/** Every check with what it takes and what it settles. */
export function checkItems(knowledge: Knowledge): CatalogueItem[] {
  return knowledge.checks.map((check) => ({
    ...named(check),
    notes: [
      `${check.minutes} min`,
      check.setUp,
      check.who,
      ...(check.helper ? ["with a helper"] : []),
      `at: ${check.places.join(", ")}`,
      `settles: ${check.settles.join(", ")}`,
    ],
  }));
}

/**
 * Items that the words fit, best first, in the order that a search of the records gave.
 *
 * A record can be several items: a feature is one under each of its complaints.
 */
export function inOrderOf(
  found: readonly { readonly id: string }[],
  items: readonly CatalogueItem[],
): CatalogueItem[] {
  return found.flatMap(({ id }) => items.filter((item) => item.id === id || item.id.endsWith(`:${id}`)));
}

function named(record: { id: string; name: string; otherNames: readonly string[] }) {
  return { id: record.id, name: record.name, otherNames: record.otherNames };
}
