import type { JobCard } from "../../../lib/case/job-card-types.ts";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { minutesWords } from "../../text/amounts.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfSetUp } from "../../text/names.ts";
import { CardFrame, CheckedPart } from "../card/card-frame.tsx";
import { AdviceOf, Part } from "../card/card-pieces.tsx";
import { checkLine } from "../check/other-checks.tsx";

/** Lines of the ranking that a technician starts from. */
const LEADERS = 5;
const SMALLEST = 0.01;

/** What the desk hands to the ramp, as it is printed. */
export function HandoverSheet({
  knowledge,
  card,
  ranked,
  checks,
  notes,
}: {
  readonly knowledge: Knowledge;
  readonly card: JobCard;
  readonly ranked: Ranked;
  readonly checks: readonly ProposedCheck[];
  readonly notes: readonly string[];
}) {
  const leaders = ranked.rows.filter((row) => row.explains >= SMALLEST).slice(0, LEADERS);
  const told = ranked.target !== "none";
  return (
    <CardFrame title="Hand-over" card={card} knowledge={knowledge}>
      <Part title="Advice before it was seen">
        {card.advised === undefined ? <p>Nothing was decided yet.</p> : <AdviceOf advice={card.advised} />}
      </Part>
      <CheckedPart title="Answered or looked at" card={card} knowledge={knowledge} />
      {told && (
        <Part title="What it may be">
          <ol>
            {leaders.map((row) => (
              <li key={row.id}>
                {capital(row.name)}: {chanceWords(row.explains)}{" "}
                <span className="soft number">({percent(row.explains)})</span>
              </li>
            ))}
          </ol>
          <p className="number">Not in this knowledge: {percent(ranked.notInKnowledge)}.</p>
        </Part>
      )}
      <Part title="Next checks, in order">
        {checks.length === 0 ? (
          <p>{told ? "No check is left that would tell anything." : "Nothing was told yet."}</p>
        ) : (
          <NextChecks knowledge={knowledge} checks={checks} />
        )}
      </Part>
      {notes.length > 0 && (
        <Part title="Notes">
          {notes.map((note) => (
            <p className="note" key={note}>
              {note}
            </p>
          ))}
        </Part>
      )}
    </CardFrame>
  );
}

function NextChecks({
  knowledge,
  checks,
}: {
  readonly knowledge: Knowledge;
  readonly checks: readonly ProposedCheck[];
}) {
  const said = new Set<string>();
  return (
    <>
      <ol className="handover-checks">
        {checks.map((proposed) => {
          const cautions = (proposed.check?.cautions ?? []).filter((id) => !said.has(id));
          for (const id of cautions) said.add(id);
          const tools = proposed.check?.tools ?? [];
          return (
            <li key={proposed.id}>
              <strong>{checkLine(knowledge, proposed)}</strong>
              <span className="soft number">
                {" "}
                {minutesWords(proposed.minutes)}, {nameOfSetUp(knowledge, proposed.setUp)}
                {proposed.check?.helper === true && ", second person"}
                {tools.length > 0 && `; ${tools.join(", ")}`}
              </span>
              {cautions.map((id) => (
                <p key={id} className="caution-line">
                  <strong>Caution:</strong> {knowledge.cautions.find((caution) => caution.id === id)?.text}
                </p>
              ))}
            </li>
          );
        })}
      </ol>
      <p className="small soft">
        The first result may change what comes after. A caution stands at the first check that needs it, and
        holds for all. Steps and what is normal stand on each check&apos;s card.
      </p>
    </>
  );
}
