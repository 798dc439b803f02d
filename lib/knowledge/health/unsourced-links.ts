import type { CompiledFault, Knowledge, Weight } from "../schema/compiled.ts";

/** Links of one fault that rest on no source. */
export interface UnsourcedFault {
  readonly fault: string;
  /** Complaints and observations, in the order of the record. */
  readonly findings: readonly string[];
}

/** Links of the faults of one part, and those of them that rest on no source. */
export interface UnsourcedPart {
  readonly part: string;
  readonly links: number;
  readonly unsourced: number;
  readonly faults: readonly UnsourcedFault[];
}

/**
 * How many links from faults to complaints and observations rest on common practice, with no source, part by part.
 *
 * A link is unsourced when the basis of any of its strengths is a record that stands for having no source.
 */
export function unsourcedLinks(knowledge: Knowledge): UnsourcedPart[] {
  const none = new Set(knowledge.sources.filter(({ status }) => status === "none").map(({ id }) => id));
  return knowledge.parts.map(({ id }) => {
    const faults = knowledge.faults.filter((fault) => fault.part === id);
    const open = faults
      .map((fault) => ({ fault: fault.id, findings: unsourcedOf(fault, none) }))
      .filter(({ findings }) => findings.length > 0);
    return {
      part: id,
      links: faults.reduce((sum, fault) => sum + linksOf(fault).length, 0),
      unsourced: open.reduce((sum, { findings }) => sum + findings.length, 0),
      faults: open,
    };
  });
}

function linksOf(fault: CompiledFault): { finding: string; weights: readonly Weight[] }[] {
  return [
    ...fault.shows.map(({ complaint, strength }) => ({ finding: complaint, weights: [strength] })),
    ...fault.links.map(({ observation, levels }) => ({ finding: observation, weights: levels })),
  ];
}

function unsourcedOf(fault: CompiledFault, none: ReadonlySet<string>): string[] {
  return linksOf(fault)
    .filter(({ weights }) => weights.some(({ basis }) => none.has(basis)))
    .map(({ finding }) => finding);
}
