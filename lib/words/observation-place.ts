import type { CompiledObservation, Knowledge } from "../knowledge/schema/compiled.ts";
import type { Words } from "../knowledge/schema/words.ts";
import type { Mention } from "./mentions.ts";
import type { Token } from "./tokens.ts";

/** Facets of a place that a text names. */
type Facets = ReadonlySet<string>;

/**
 * The place that the words around an observation tell of.
 *
 * Shape   sides: the mentions of features that say where it seems to be from. Gives the one place of the observation that
 *         fits what is said in the clause, else in the sentence; undefined when none or more than one fits.
 */
export function placeOf(
  knowledge: Knowledge,
  observation: CompiledObservation,
  mention: Mention,
  sides: readonly Mention[],
  tokens: readonly Token[],
): string | undefined {
  const at = tokens[mention.hit.first];
  // "Lower arm rear bush" names a part, not a place.
  const apart = sides.filter(
    (side) => side.hit.last < mention.hit.first || side.hit.first > mention.hit.last,
  );
  const inClause = apart.filter((side) => tokens[side.hit.first]?.clause === at?.clause);
  const inSentence = apart.filter((side) => tokens[side.hit.first]?.sentence === at?.sentence);
  for (const told of [inClause, inSentence]) {
    if (told.length === 0) continue;
    const facets = facetsOf(knowledge.words.sides, told);
    const fitting = observation.places.filter((id) => fits(knowledge, id, facets));
    return fitting.length === 1 ? fitting[0] : undefined;
  }
  return undefined;
}

function facetsOf(sides: Words["sides"], told: readonly Mention[]): Facets {
  const ids = new Set(told.filter((side) => side.state === "present").map((side) => side.id));
  return new Set(
    Object.entries(sides)
      .filter(([, feature]) => ids.has(feature))
      .map(([facet]) => facet),
  );
}

function fits(knowledge: Knowledge, id: string, facets: Facets): boolean {
  if (facets.size === 0 || facets.size > 2) return false;
  const place = knowledge.places.places.find((record) => record.id === id);
  return place !== undefined && [...facets].every((facet) => place.side === facet || place.axle === facet);
}
