import type { ReactNode } from "react";
import type { CardAdvice, JobCard } from "../../../lib/case/job-card-types.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { hoursWords } from "../../text/amounts.ts";
import { momentWords } from "../../text/moment.ts";
import { capital } from "../../text/names.ts";
import { saidLines } from "../../text/said-lines.ts";

/** A part of a printed sheet, with its heading. */
export function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="job-part">
      <h2>{capital(title)}</h2>
      <div>{children}</div>
    </section>
  );
}

/** A fact of the head of a printed sheet. */
export function Pair({ name, value }: { readonly name: string; readonly value: string | undefined }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value === undefined || value === "" ? "-" : value}</dd>
    </div>
  );
}

/** What to do at once; nothing when there is no notice. */
export function CardStop({ notices }: { readonly notices: readonly string[] }) {
  if (notices.length === 0) return null;
  return (
    <section className="stop" aria-label="Stop notice">
      {notices.map((say) => (
        <p className="stop-say" key={say}>
          <span className="stop-sign" aria-hidden="true">
            STOP
          </span>
          {say}
        </p>
      ))}
    </section>
  );
}

/** What was said yes and no to. */
export function ToldOf({
  card,
  knowledge,
}: {
  readonly card: Pick<JobCard, "complaint">;
  readonly knowledge: Knowledge;
}) {
  const words = (is: "present" | "absent") =>
    saidLines(knowledge, card.complaint.told, is)
      .map(({ of, names }) => [of, names.join(", ")].filter((w) => w !== "").join(": "))
      .join("; ");
  const yes = words("present");
  const no = words("absent");
  return (
    <>
      {yes !== "" && <p>Yes: {yes}.</p>}
      {no !== "" && <p>No: {no}.</p>}
    </>
  );
}

/** What the customer was advised before anybody had seen the car. */
export function AdviceOf({ advice }: { readonly advice: CardAdvice }) {
  const { level, said, p50, p90, parts, note, by, at } = advice;
  return (
    <>
      <p>
        <strong>{level}.</strong> {said}
      </p>
      {p50 !== undefined && p90 !== undefined && (
        <p className="number">
          Time to book: half of such visits within {hoursWords(p50)}, nine of ten within {hoursWords(p90)}.
        </p>
      )}
      {parts.length > 0 && <p>Parts to have ready: {parts.join("; ")}.</p>}
      {note !== undefined && <p className="note">{note}</p>}
      <p className="soft small number">
        Advised {momentWords(at)}, signed {by}
      </p>
    </>
  );
}
