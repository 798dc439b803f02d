import type { FindingsGroup, findingsIndex } from "../../../lib/knowledge/pages/index.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { Row } from "./row.tsx";

/** All findings: complaints, their features, what checks find, what happened lately. */
export function FindingsList({ index }: { readonly index: ReturnType<typeof findingsIndex> }) {
  return (
    <KnowledgeSheet
      at="findings"
      title="Findings"
      lead="What is complained of, seen, felt or measured, and what gives it."
    >
      <SheetPart id="complaints" title="Complaints">
        <Findings findings={index.complaints} />
      </SheetPart>
      <SheetPart id="features" title="What a complaint is like">
        <Groups groups={index.features} />
      </SheetPart>
      <SheetPart id="observations" title="What checks find, by the part behind it">
        <Groups groups={index.observations} />
      </SheetPart>
      <SheetPart id="contexts" title="What happened lately">
        <Findings findings={index.contexts} />
      </SheetPart>
    </KnowledgeSheet>
  );
}

function Groups({ groups }: { readonly groups: readonly FindingsGroup[] }) {
  return groups.map(({ name, findings }) => (
    <details key={name}>
      <summary>
        <span>
          {capital(name)} <span className="soft">({findings.length})</span>
        </span>
      </summary>
      <Findings findings={findings} />
    </details>
  ));
}

function Findings({ findings }: { readonly findings: FindingsGroup["findings"] }) {
  return (
    <ul className="know-list">
      {findings.map(({ id, name }) => (
        <Row key={id} href={findingHref(id)} name={capital(name)} />
      ))}
    </ul>
  );
}
