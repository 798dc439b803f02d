import type { Knowledge } from "../schema/compiled.ts";

/** What the knowledge holds about one complaint. */
export interface FamilyCoverage {
  readonly complaint: string;
  readonly name: string;
  /** Parts and faults that can show it. */
  readonly parts: number;
  readonly faults: number;
  readonly features: number;
  /** Checks of something that one of those faults gives. */
  readonly checks: number;
}

/** How much the knowledge holds, and where it has gaps. Ids in the order of the knowledge. */
export interface Coverage {
  readonly parts: number;
  readonly faults: number;
  readonly complaints: number;
  readonly features: number;
  readonly observations: number;
  readonly contexts: number;
  readonly checks: number;
  readonly families: readonly FamilyCoverage[];
  /** Faults of which no check settles a decisive finding. */
  readonly withoutDecisiveCheck: readonly string[];
  /** Parts that no layout draws. */
  readonly withoutShape: readonly string[];
}

/** Count what the knowledge holds: altogether, behind each complaint, and what is missing. */
export function coverageOf(knowledge: Knowledge): Coverage {
  const { faults, checks } = knowledge;
  const settled = new Set(checks.flatMap((check) => check.settles));
  const drawn = new Set(knowledge.layouts.flatMap(({ shapes }) => shapes.flatMap((shape) => shape.parts)));
  return {
    parts: knowledge.parts.length,
    faults: faults.length,
    complaints: knowledge.complaints.length,
    features: knowledge.features.length,
    observations: knowledge.observations.length,
    contexts: knowledge.contexts.length,
    checks: checks.length,
    families: knowledge.complaints.map(({ id, name }) => {
      const behind = faults.filter((fault) => fault.shows.some((showing) => showing.complaint === id));
      const given = new Set(behind.flatMap((fault) => fault.links.map((link) => link.observation)));
      return {
        complaint: id,
        name,
        parts: new Set(behind.map((fault) => fault.part)).size,
        faults: behind.length,
        features: knowledge.features.filter((feature) => feature.complaints.includes(id)).length,
        checks: checks.filter((check) => check.settles.some((observation) => given.has(observation))).length,
      };
    }),
    withoutDecisiveCheck: faults
      .filter((fault) => !fault.decisive.some(({ observation }) => settled.has(observation)))
      .map((fault) => fault.id),
    withoutShape: knowledge.parts.filter((part) => !drawn.has(part.id)).map((part) => part.id),
  };
}
