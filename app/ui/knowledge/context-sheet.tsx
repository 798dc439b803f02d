import type { ContextPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { Fact } from "../fact.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { NamesFact } from "./names-fact.tsx";
import { Row } from "./row.tsx";
import { Strength } from "./strength.tsx";
import { factorWords } from "./wear-words.ts";

/** Something that happened to the car lately, and what it makes likelier or less likely. */
export function ContextSheet({
  knowledge,
  page,
}: {
  readonly knowledge: Knowledge;
  readonly page: ContextPage;
}) {
  const { record, moves } = page;
  const parts = [
    { id: "likelier", title: "What it makes likelier", own: moves.filter(({ factor }) => factor > 1) },
    {
      id: "less-likely",
      title: "What it makes less likely",
      own: moves.filter(({ factor }) => factor < 1).reverse(),
    },
  ].filter(({ own }) => own.length > 0);
  return (
    <KnowledgeSheet at="findings" kind="What happened lately" title={capital(record.name)}>
      <dl className="facts">
        <Fact name="How it is asked for">{record.question}</Fact>
        <Fact name="Cars that come in with it">
          <Strength knowledge={knowledge} p={record.share} />
        </Fact>
        <NamesFact names={record.otherNames} />
      </dl>
      {parts.map(({ id, title, own }) => (
        <SheetPart key={id} id={id} title={title}>
          <ul className="know-list">
            {own.map(({ fault, part, factor }) => (
              <Row
                key={fault.id}
                href={partHref(part.id, fault.id)}
                name={`${capital(part.name)}: ${fault.name}`}
              >
                {factorWords(factor)}
              </Row>
            ))}
          </ul>
        </SheetPart>
      ))}
      <p className="small soft">Factors: common practice, no source.</p>
    </KnowledgeSheet>
  );
}
