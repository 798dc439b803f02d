import type { CheckPage, Settling } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { CheckSteps, WhoAndTools } from "../check/check-pieces.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { Fact } from "../fact.tsx";
import { CauseList } from "./cause-list.tsx";
import { CautionBox } from "./caution-box.tsx";
import { EndedNote } from "./ended-note.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { LimitLines } from "./limit-lines.tsx";
import { Row, TextLink } from "./row.tsx";
import { SourceNote } from "./source-list.tsx";
import { NamesFact } from "./names-fact.tsx";
import { PlaceFacts } from "./place-facts.tsx";

/** Everything that is known of a check. */
export function CheckSheet({ knowledge, page }: { readonly knowledge: Knowledge; readonly page: CheckPage }) {
  const { check, places, needs, setUp, cautions, notWhen } = page;
  return (
    <KnowledgeSheet at="checks" kind="Check" title={capital(check.name)}>
      <EndedNote ended={check.ended} />
      <dl className="facts">
        <Fact name="Takes">{minutesWords(check.minutes)}, once the car is set up</Fact>
        <Fact name="Car">
          {setUp?.name ?? check.setUp}. {setUp?.about}
        </Fact>
        <WhoAndTools check={check} />
        <PlaceFacts places={places} needs={needs} />
        <NamesFact names={check.otherNames} />
      </dl>
      <SheetPart id="steps" title="Steps">
        {notWhen.length > 0 && (
          <div className="trouble">
            <p>
              <strong>Not to be done</strong> when one of these was found:
            </p>
            <ul>
              {notWhen.map((observation) => (
                <li key={observation.id}>{capital(observation.name)}</li>
              ))}
            </ul>
          </div>
        )}
        <CautionBox texts={cautions} />
        <CheckSteps check={check} />
      </SheetPart>
      <SheetPart id="results" title="What each result tells">
        {page.settles.map((settling) => (
          <SettlingPart key={settling.observation.id} knowledge={knowledge} settling={settling} />
        ))}
      </SheetPart>
      {page.complaints.length > 0 && (
        <SheetPart id="helps" title="What it helps to tell">
          <p>
            {page.proves.length > 0
              ? `It can prove ${page.proves.length} of the faults above by itself. `
              : "It proves nothing by itself; it moves the chances. "}
            The faults that it sees can be behind these complaints:
          </p>
          <ul className="know-list">
            {page.complaints.map(({ complaint, faults }) => (
              <Row key={complaint.id} href={findingHref(complaint.id)} name={capital(complaint.name)}>
                {faults === 1 ? "1 fault" : `${faults} faults`}
              </Row>
            ))}
          </ul>
        </SheetPart>
      )}
      <SourceNote source={page.source} of="the procedure" />
    </KnowledgeSheet>
  );
}

function SettlingPart({
  knowledge,
  settling,
}: {
  readonly knowledge: Knowledge;
  readonly settling: Settling;
}) {
  const { observation, causes, limits } = settling;
  const strong = causes.filter(({ weights }) => (weights[0]?.p ?? 0) >= 0.6).length;
  return (
    <section className="know-group" aria-labelledby={`${observation.id}-title`}>
      <h3 id={`${observation.id}-title`}>{capital(observation.name)}</h3>
      <p>
        <TextLink href={findingHref(observation.id)}>About this finding</TextLink>
      </p>
      {observation.normal !== undefined && (
        <p>
          <strong>Normal:</strong> {observation.normal}
        </p>
      )}
      <LimitLines observation={observation} limits={limits} decides={knowledge.limits.decides} />
      <h4>When it is there</h4>
      <CauseList knowledge={knowledge} causes={causes} levels={observation.levels} />
      <h4>When it is not there</h4>
      <p>
        {strong === 0
          ? "It speaks only a little against the faults above: none of them gives it often."
          : strong === causes.length
            ? "It speaks against the faults above, the more so the more often they give it."
            : "It speaks against those above that give it often, and little against the others."}
      </p>
    </section>
  );
}
