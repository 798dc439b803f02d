import type { PartPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital } from "../../text/names.ts";
import { EndedNote } from "./ended-note.tsx";
import { FaultSection } from "./fault-section.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { NamesFact } from "./names-fact.tsx";
import { PlaceFacts } from "./place-facts.tsx";

/** Everything that is known of a part. */
export function PartSheet({ knowledge, page }: { readonly knowledge: Knowledge; readonly page: PartPage }) {
  const { part, places, needs, faults } = page;
  const names = [...part.otherNames, ...part.generalNames];
  return (
    <KnowledgeSheet at="parts" kind="Part" title={capital(part.name)} lead={part.about}>
      <EndedNote ended={part.ended} />
      <dl className="facts">
        <PlaceFacts places={places} needs={needs} />
        <NamesFact names={names} />
      </dl>
      {faults.length > 1 && (
        <nav aria-label="Ways it fails">
          <ul className="know-list">
            {faults.map(({ fault }) => (
              <li key={fault.id} className="know-row">
                <a className="row-link" href={`#${fault.id}`}>
                  {capital(fault.name)}
                </a>
                <span className="row-side">{fault.severity.word}</span>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {faults.map((entry) => (
        <FaultSection key={entry.fault.id} knowledge={knowledge} part={part} entry={entry} />
      ))}
      {faults.length === 0 && <p className="notice">No way of failing is recorded for it yet.</p>}
    </KnowledgeSheet>
  );
}
