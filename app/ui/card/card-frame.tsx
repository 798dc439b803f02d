import type { ReactNode } from "react";
import type { JobCard } from "../../../lib/case/job-card-types.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { dayWords } from "../../text/moment.ts";
import { capital } from "../../text/names.ts";
import { CardStop, Pair, Part, ToldOf } from "./card-pieces.tsx";
import { checkedLines } from "./checked-lines.ts";

/** A printed sheet of a case: whose car it is, what to do at once and what was complained of; its parts; what it goes by. */
export function CardFrame({
  title,
  card,
  knowledge,
  children,
}: {
  readonly title: string;
  readonly card: JobCard;
  readonly knowledge: Knowledge;
  readonly children: ReactNode;
}) {
  return (
    <article className="job-card">
      <header className="job-head">
        <h1>{title}</h1>
        <dl>
          <Pair name="Vehicle" value={card.vehicle} />
          <Pair name="Plate" value={card.plate} />
          <Pair name="Customer" value={card.customer} />
          <Pair name="Opened" value={card.openedAt && dayWords(card.openedAt)} />
        </dl>
        {card.inventedNotice !== undefined && <p className="invented">{card.inventedNotice}</p>}
      </header>
      <CardStop notices={card.stopNotices} />
      <Part title="Complaint">
        {card.complaint.words.map((words) => (
          <blockquote className="told" key={words}>
            {words}
          </blockquote>
        ))}
        <ToldOf card={card} knowledge={knowledge} />
        {card.contexts.length > 0 && <p>Lately: {card.contexts.join("; ")}.</p>}
      </Part>
      {children}
      <footer className="small">
        {card.statements.map((statement) => (
          <p key={statement}>{statement}</p>
        ))}
        <p className="soft number">
          Knowledge {card.release.version}; case {card.caseId}
        </p>
      </footer>
    </article>
  );
}

/** What was answered, looked at or measured, a line a check; nothing when there is none. */
export function CheckedPart({
  title,
  card,
  knowledge,
}: {
  readonly title: string;
  readonly card: JobCard;
  readonly knowledge: Knowledge;
}) {
  if (card.found.length === 0) return null;
  return (
    <Part title={title}>
      <ul className="two-columns">
        {checkedLines(card, knowledge).map(({ key, check, words }) => (
          <li key={key}>
            {check === "" ? capital(words) : `${capital(check)}: `}
            {check !== "" && <strong>{words}</strong>}
          </li>
        ))}
      </ul>
    </Part>
  );
}
