import type { CardWork, JobCard } from "../../../lib/case/job-card-types.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfSuspect } from "../../text/names.ts";
import { CardFrame, CheckedPart } from "./card-frame.tsx";
import { AdviceOf, Part } from "./card-pieces.tsx";
import { foundWords } from "./checked-lines.ts";

/** The job card as it is printed: one or two pages. */
export function JobCardSheet({ card, knowledge }: { readonly card: JobCard; readonly knowledge: Knowledge }) {
  return (
    <CardFrame title="Job card" card={card} knowledge={knowledge}>
      {card.advised !== undefined && (
        <Part title="Advice before it was seen">
          <AdviceOf advice={card.advised} />
        </Part>
      )}
      <Part title="Verdict">
        <VerdictOf card={card} knowledge={knowledge} />
      </Part>
      {card.work.map((work) => (
        <Part key={work.suspect} title={`Work: ${work.name}`}>
          <WorkOf work={work} />
        </Part>
      ))}
      {card.severity.length > 0 && (
        <Part title="How grave">
          <ul>
            {card.severity.map((s) => (
              <li key={s.suspect}>
                <strong>{capital(s.word)}</strong>: {s.name}. {capital(s.reason)}
                <span className="soft">
                  {" "}
                  ({s.basis}
                  {s.item !== undefined && `, ${s.item}`})
                </span>
              </li>
            ))}
          </ul>
        </Part>
      )}
      {card.cautions.length > 0 && (
        <Part title="Cautions">
          <ul>
            {card.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Part>
      )}
      <CheckedPart title="What was checked" card={card} knowledge={knowledge} />
      {(card.alsoLikely.length > 0 || card.unexplained.length > 0) && (
        <Part title="What else was found">
          <ul>
            {card.unexplained.map((finding) => (
              <li key={finding.finding}>Found, but not explained by the verdict: {finding.name}</li>
            ))}
            {card.alsoLikely.map((suspect) => (
              <li key={suspect.suspect}>
                Likely there as well ({percent(suspect.present)}): {suspect.name}
              </li>
            ))}
          </ul>
        </Part>
      )}
      {card.open.length > 0 && (
        <Part title="What stays open">
          <ul>
            {card.open.map((matter) => (
              <li key={matter}>{matter}</li>
            ))}
          </ul>
        </Part>
      )}
      <section className="sign">
        <p>Work done by</p>
        <p>Date</p>
        <p>Road tested by</p>
      </section>
    </CardFrame>
  );
}

function VerdictOf({ card, knowledge }: { readonly card: JobCard; readonly knowledge: Knowledge }) {
  const { verdict } = card;
  if (verdict === undefined) return <p>No verdict was given yet.</p>;
  return (
    <>
      <ul className="verdict-list">
        {verdict.suspects.map((s) => (
          <li key={s.suspect}>
            <strong>{capital(s.name)}</strong>
          </li>
        ))}
      </ul>
      {verdict.proof.length > 0 && (
        <p>Proof: {verdict.proof.map((f) => `${f.name} (${foundWords(f)})`).join("; ")}.</p>
      )}
      {verdict.unproven.length > 0 && (
        <p>
          <strong>Not proven by hand:</strong>{" "}
          {verdict.unproven.map((id) => nameOfSuspect(knowledge, id)).join("; ")}.
        </p>
      )}
      {verdict.note !== undefined && <p className="note">{verdict.note}</p>}
      <p className="soft small number">
        Given {momentWords(verdict.at)}, signed {verdict.by}
      </p>
    </>
  );
}

function WorkOf({ work }: { readonly work: CardWork }) {
  return (
    <>
      <ol>
        {work.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>Labour: about {minutesWords(work.minutes)}.</p>
      {work.paired.length > 0 && (
        <p>Renew together: {work.paired.map((p) => `${p.part}, ${p.where} (${p.why})`).join("; ")}.</p>
      )}
      {work.lookAtToo.length > 0 && <p>Look at too: {work.lookAtToo.join("; ")}.</p>}
    </>
  );
}
