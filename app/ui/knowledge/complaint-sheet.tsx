import type { ComplaintPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { Fact } from "../fact.tsx";
import { CauseList } from "./cause-list.tsx";
import { EndedNote } from "./ended-note.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { NamesFact } from "./names-fact.tsx";
import { Row } from "./row.tsx";
import { SourceNote } from "./source-list.tsx";
import { Strength } from "./strength.tsx";

const ASPECTS = {
  sound: "is heard",
  feel: "is felt",
  handling: "shows in the handling",
  look: "is seen",
} as const;

/** A complaint: how it is asked for, what it can be like, what gives it. */
export function ComplaintSheet({
  knowledge,
  page,
}: {
  readonly knowledge: Knowledge;
  readonly page: ComplaintPage;
}) {
  const { record, causes, groups, source } = page;
  return (
    <KnowledgeSheet at="findings" kind="Complaint" title={capital(record.name)}>
      <EndedNote ended={record.ended} />
      <dl className="facts">
        <Fact name="What it is">A complaint that {ASPECTS[record.aspect]}</Fact>
        <Fact name="How it is asked for">{record.question}</Fact>
        <Fact name="Through causes that are not listed here">
          <Strength knowledge={knowledge} p={record.leak} />
        </Fact>
        <NamesFact names={record.otherNames} />
      </dl>
      <SheetPart id="features" title="What it can be like">
        {groups.map(({ name, features }) => (
          <details key={name}>
            <summary>
              <span>
                {capital(name)} <span className="soft">({features.length})</span>
              </span>
            </summary>
            <ul className="know-list">
              {features.map((feature) => (
                <Row key={feature.id} href={findingHref(feature.id)} name={capital(feature.name)} />
              ))}
            </ul>
          </details>
        ))}
      </SheetPart>
      <SheetPart id="causes" title="What gives it">
        <p className="soft">
          How often each fault gives it. How common the fault is stands on the page of its part.
        </p>
        <CauseList knowledge={knowledge} causes={causes} levels={["present"]} />
      </SheetPart>
      <SourceNote source={source} />
    </KnowledgeSheet>
  );
}
