import type { FeaturePage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { facetWords } from "../../text/facet-words.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { WHO_WORDS } from "../../text/who-words.ts";
import { Fact } from "../fact.tsx";
import { CauseList } from "./cause-list.tsx";
import { EndedNote } from "./ended-note.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { NamesFact } from "./names-fact.tsx";
import { Row, TextLink } from "./row.tsx";
import { Strength } from "./strength.tsx";
import { SheetPart } from "../sheet-part.tsx";

const KINDS = {
  moment: "A moment in which a complaint comes",
  sound: "A kind of sound",
  felt: "Where a complaint is felt",
  where: "Where a complaint seems to come from",
  speed: "A speed at which a complaint comes",
  pattern: "A pattern of wear",
  direction: "A direction",
  course: "How a complaint came",
} as const;

/** So many faults stand open under each complaint. */
const OPEN = 8;

/** A feature of complaints: how it is asked for, and which faults have it. */
export function FeatureSheet({
  knowledge,
  page,
}: {
  readonly knowledge: Knowledge;
  readonly page: FeaturePage;
}) {
  const { record, of, usual, opposite } = page;
  return (
    <KnowledgeSheet at="findings" kind="Feature of a complaint" title={capital(record.name)}>
      <EndedNote ended={record.ended} />
      <dl className="facts">
        <Fact name="What it is">{KINDS[record.kind]}</Fact>
        <Fact name="How it is asked for">{record.question}</Fact>
        <Fact name="Who can say">{WHO_WORDS[record.who]}</Fact>
        {record.speed !== undefined && (
          <Fact name="Speed">
            {record.speed.from} to {record.speed.to} km/h
          </Fact>
        )}
        <Fact name="Goes together with others of">{page.group}</Fact>
        <Fact name="When the cause is not listed here">
          <Strength knowledge={knowledge} p={record.background} />
        </Fact>
        {usual.map(({ facet, p }) => (
          <Fact key={facet} name={capital(facetWords(facet))}>
            <Strength knowledge={knowledge} p={p} />, unless listed below
          </Fact>
        ))}
        <NamesFact names={record.otherNames} />
      </dl>
      {opposite !== undefined && (
        <p>
          It rules out: <TextLink href={findingHref(opposite.id)}>{opposite.name}</TextLink>
        </p>
      )}
      {of.map(({ complaint, causes }) => (
        <SheetPart key={complaint.id} id={complaint.id} title={capital(complaint.name)}>
          <ul className="know-list">
            <Row href={findingHref(complaint.id)} name={`About the complaint: ${complaint.name}`} />
          </ul>
          {causes.length === 0 ? (
            <p>No fault names it; it tells apart only what names its opposite or its neighbours.</p>
          ) : (
            <>
              <p className="soft">Of the times that the fault gives the complaint.</p>
              <CauseList knowledge={knowledge} causes={causes} levels={["present"]} open={OPEN} />
            </>
          )}
        </SheetPart>
      ))}
    </KnowledgeSheet>
  );
}
