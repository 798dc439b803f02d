import type { ReactNode } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Exercise } from "../../../lib/training/index.ts";
import { saidLines } from "../../text/said-lines.ts";
import { capital, nameOfFinding } from "../../text/names.ts";
import { carLine } from "../case/car-fields.ts";

/** A part of a printed sheet. */
export function PaperPart({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="job-part">
      <h2>{title}</h2>
      <div>{children}</div>
    </section>
  );
}

/** Head and open part of an exercise: the car, and what its customer says. */
export function OpenOnPaper({
  title,
  exercise,
  knowledge,
}: {
  readonly title: string;
  readonly exercise: Exercise;
  readonly knowledge: Knowledge;
}) {
  const { name, about, vehicle, customer, car, lately, text, said, terms } = exercise;
  const { attributes } = knowledge.car;
  const lines = saidLines(knowledge, said, "present")
    .map(({ of, names }) => (of === "" ? names.join("; ") : [capital(of), ...names].join("; ")))
    .join(". ");
  const no = said.filter((s) => s.state === "absent");
  return (
    <>
      <header className="job-head">
        <h1>
          {title}: {name}
        </h1>
        <p className="invented">
          <strong>Invented exercise.</strong> No real car, customer or workshop.
        </p>
        {about !== "" && <p>{about}</p>}
      </header>
      <PaperPart title="The car">
        <p>
          {[vehicle, carLine(attributes, car, { distance: "km", length: "mm" })].filter(Boolean).join("; ")}
        </p>
        <p>Customer: {customer}</p>
        {lately.length > 0 && <p>Lately: {lately.map((id) => nameOfFinding(knowledge, id)).join("; ")}</p>}
      </PaperPart>
      <PaperPart title="What is said">
        {text !== "" && <p className="told">{text}</p>}
        <p>{lines}.</p>
        {no.length > 0 && <p>Not: {no.map((s) => nameOfFinding(knowledge, s.finding)).join("; ")}.</p>}
      </PaperPart>
      <PaperPart title="To work with">
        <p>
          {[
            terms.lift ? "a lift" : "no lift",
            terms.helper ? "a second person" : "nobody to help",
            terms.mostMinutes !== undefined && `${terms.mostMinutes} minutes on the ramp`,
            terms.missingTools.length > 0 && `not there: ${terms.missingTools.join(", ")}`,
          ]
            .filter(Boolean)
            .join("; ")}
          .
        </p>
      </PaperPart>
    </>
  );
}
