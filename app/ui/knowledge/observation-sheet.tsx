import type { ObservationPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, levelWords } from "../../text/names.ts";
import { needsWords } from "../../text/needs-words.ts";
import { checkHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { CauseList } from "./cause-list.tsx";
import { EndedNote } from "./ended-note.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { LimitLines } from "./limit-lines.tsx";
import { NamesFact } from "./names-fact.tsx";
import { Row } from "./row.tsx";
import { SourceLine } from "./source-list.tsx";
import { Strength } from "./strength.tsx";

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
        <div>
          <dt>Where</dt>
          <dd>{places.join(", ")}</dd>
        </div>
        <div>
          <dt>On which cars</dt>
          <dd>{needs.length === 0 ? "every car" : needsWords(needs)}</dd>
        </div>
        {record.levels.length > 1 && (
          <div>
            <dt>Grades</dt>
            <dd>{record.levels.map(levelWords).join(", ")}</dd>
          </div>
        )}
        {record.leak.map((p, i) => (
          <div key={record.levels[i] ?? i}>
            <dt>
              Found without any of the faults below
              {record.levels.length > 1 && `, ${levelWords(record.levels[i] ?? "")}`}
            </dt>
            <dd>
              <Strength knowledge={knowledge} p={p} />
            </dd>
          </div>
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
      {source !== undefined && (
        <p className="small soft">
          Source: <SourceLine source={source} />
        </p>
      )}
    </KnowledgeSheet>
  );
}
