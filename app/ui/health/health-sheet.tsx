import type { SiteHealth } from "../../knowledge/site-health.ts";
import { KnowledgeSheet } from "../knowledge/knowledge-sheet.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { CoveragePart } from "./coverage-part.tsx";
import { LintPart } from "./lint-part.tsx";
import { PairsPart } from "./pairs-part.tsx";
import { SharesPart } from "./shares-part.tsx";
import { UnsourcedPart } from "./unsourced-part.tsx";
import { WeakestPart } from "./weakest-part.tsx";

const PARTS = [
  ["rules", "Rules that the records keep", LintPart],
  ["coverage", "What is covered", CoveragePart],
  ["inseparable", "Faults that checks hardly tell apart", PairsPart],
  ["weakest", "Faults that are hardest to reach", WeakestPart],
  ["unsourced", "Links without a source", UnsourcedPart],
  ["shares", "Priors against published shares", SharesPart],
] as const;

/** How sound the knowledge is, as far as it can tell of itself. */
export function HealthSheet({ health }: { readonly health: SiteHealth }) {
  return (
    <KnowledgeSheet
      title="Health of the knowledge"
      lead={`What version ${health.knowledge.version} covers, what it lacks, and how far its figures can be trusted.`}
    >
      <nav aria-label="On this page">
        <ul className="know-list">
          {PARTS.map(([id, title]) => (
            <li key={id} className="know-row">
              <a className="row-link" href={`#${id}`}>
                {title}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {PARTS.map(([id, title, Part]) => (
        <SheetPart key={id} id={id} title={title}>
          <Part health={health} />
        </SheetPart>
      ))}
    </KnowledgeSheet>
  );
}
