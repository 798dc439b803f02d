import type { ObservationPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, levelWords } from "../../text/names.ts";
import { checkHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { Fact } from "../fact.tsx";
import { CauseList } from "./cause-list.tsx";
import { EndedNote } from "./ended-note.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { LimitLines } from "./limit-lines.tsx";
import { NamesFact } from "./names-fact.tsx";
import { Row } from "./row.tsx";
import { SourceNote } from "./source-list.tsx";
import { Strength } from "./strength.tsx";
import { PlaceFacts } from "./place-facts.tsx";

/** A finding by a check: how it is made, what is normal, what gives it. */
export function ObservationSheet({
  knowledge,
  page,
}: {
  readonly knowledge: Knowledge;
  readonly page: ObservationPage;
}) {
  const { record, places, needs, causes, checks, limits, forbids, source } = page;
  return (
    <KnowledgeSheet at="findings" kind="Finding of a check" title={capital(record.name)}>
      <EndedNote ended={record.ended} />
      <dl className="facts">
        <PlaceFacts places={places} needs={needs} />
        {record.levels.length > 1 && <Fact name="Grades">{record.levels.map(levelWords).join(", ")}</Fact>}
        {record.leak.map((p, i) => (
          <Fact
            key={record.levels[i] ?? i}
            name={`Found without any of the faults below${
              record.levels.length > 1 ? `, ${levelWords(record.levels[i] ?? "")}` : ""
            }`}
          >
            <Strength knowledge={knowledge} p={p} />
          </Fact>
        ))}
        <NamesFact names={record.otherNames} />
      </dl>
      {record.normal !== undefined && (
        <p>
          <strong>Normal, and not this:</strong> {record.normal}
        </p>
      )}
      <LimitLines observation={record} limits={limits} decides={knowledge.limits.decides} />
      <SheetPart id="checks" title="Which checks show it">
        {checks.length === 0 && <p className="notice">No check of this knowledge shows it.</p>}
        <ul className="know-list">
          {checks.map((check) => (
            <Row key={check.id} href={checkHref(check.id)} name={capital(check.name)}>
              {minutesWords(check.minutes)}
            </Row>
          ))}
        </ul>
      </SheetPart>
      <SheetPart id="causes" title="What gives it">
        <CauseList knowledge={knowledge} causes={causes} levels={record.levels} />
      </SheetPart>
      {forbids.length > 0 && (
        <SheetPart id="forbids" title="Checks that it forbids">
          <ul className="know-list">
            {forbids.map((check) => (
              <Row key={check.id} href={checkHref(check.id)} name={capital(check.name)} />
            ))}
          </ul>
        </SheetPart>
      )}
      <SourceNote source={source} />
    </KnowledgeSheet>
  );
}
