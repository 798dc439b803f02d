import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Exercise } from "../../../lib/training/index.ts";
import { OpenOnPaper, PaperPart } from "./exercise-on-paper.tsx";

/** Lines for checks: what fits on the first page below the rest. */
const LINES = Array.from({ length: 12 }, (_, k) => k + 1);
const COLUMNS = ["Check or question, and where", "Minutes", "Result", "What it tells"];
const CONFIDENCE = ["50 %", "60 %", "70 %", "80 %", "90 %", "99 %"];

/** What a trainee fills in by hand: nothing on it gives the fault away. */
export function Worksheet({
  exercise,
  knowledge,
}: {
  readonly exercise: Exercise;
  readonly knowledge: Knowledge;
}) {
  return (
    <article className="job-card worksheet">
      <OpenOnPaper title="Worksheet" exercise={exercise} knowledge={knowledge} />
      <p className="small">
        Ask whoever runs the exercise for the result of each check. Write down before you ask what you expect
        of it.
      </p>
      <table className="lines">
        <caption className="hidden">Checks and questions in the order in which they are made</caption>
        <thead>
          <tr>
            <th scope="col">No.</th>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {LINES.map((line) => (
            <tr key={line}>
              <th scope="row">{line}</th>
              {COLUMNS.map((column) => (
                <td key={column}>
                  <span className="hidden">{column}, to be filled in</span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <PaperPart title="Verdict">
        <p>Part, place and what is wrong with it:</p>
        <p className="write-line" />
        <p>What proves it:</p>
        <p className="write-line" />
        <p>
          How sure are you?{" "}
          {CONFIDENCE.map((share) => (
            <span key={share} className="pick-box">
              {share}
            </span>
          ))}
        </p>
      </PaperPart>
      <section className="sign">
        <p>Name</p>
        <p>Date</p>
        <p>Minutes in all</p>
      </section>
    </article>
  );
}
