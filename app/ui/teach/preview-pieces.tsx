import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Exercise } from "../../../lib/training/index.ts";
import type { PreviewShown, PreviewStep } from "../../engine/exercise-protocol.ts";
import { minutesWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { capital, nameOfCheck, nameOfFindingAt, nameOfRepair } from "../../text/names.ts";
import { stateWords } from "../../text/state-words.ts";
import { Fact } from "../fact.tsx";

interface Props {
  readonly knowledge: Knowledge;
  readonly shown: PreviewShown;
}

/** What makes the exercise unfair, said before it is handed out. */
export function PreviewWarnings({ knowledge, shown, exercise }: Props & { readonly exercise: Exercise }) {
  const { difficulty, notTold } = shown;
  const { mostMinutes } = exercise.terms;
  return (
    <>
      {!difficulty.solvable && (
        <p className="trouble">
          The best way does not end at what is hidden. Nobody can be expected to find it: change what is said,
          the tools, or the results that are set.
        </p>
      )}
      {notTold.length > 0 && (
        <p className="trouble">
          With the checks that exist it cannot be told from:{" "}
          {notTold.map((r) => `${nameOfRepair(knowledge, r.repair)} (${percent(r.chance)})`).join("; ")}.
        </p>
      )}
      {mostMinutes !== undefined && difficulty.bestMinutes > mostMinutes && (
        <p className="trouble">
          The best way takes {minutesWords(difficulty.bestMinutes)}; {minutesWords(mostMinutes)} are given.
        </p>
      )}
    </>
  );
}

/** How hard it is, in a few facts. */
export function PreviewFacts({ shown }: Pick<Props, "shown">) {
  const { level, bestMinutes, rank, rivals, misleading } = shown.difficulty;
  return (
    <dl className="facts">
      <Fact name="Difficulty, as reckoned">{capital(level)}</Fact>
      <Fact name="The best way takes">
        {minutesWords(bestMinutes)}, {shown.path.length} checks and questions
      </Fact>
      <Fact name="On the words alone">
        {rank === 1 ? "the hidden part is in front" : `the hidden part is number ${rank}`}
        {rivals > 1 && `; ${rivals} parts are about as likely as the first`}
      </Fact>
      <Fact name="Misleading">
        {misleading.length === 0 ? "nothing that is said" : misleading.join("; ")}
      </Fact>
    </dl>
  );
}

/** Parts that seem to be it on the way, though they are in order. */
export function PreviewTraps({ knowledge, shown }: Props) {
  if (shown.traps.length === 0)
    return <p>No part that is in order ever stands in front: there is no trap.</p>;
  return (
    <>
      <h3>Traps</h3>
      <ul>
        {shown.traps.map(({ repair, chance }) => (
          <li key={repair}>
            {capital(nameOfRepair(knowledge, repair))}: in front with {percent(chance)} at its highest, and in
            order
          </li>
        ))}
      </ul>
    </>
  );
}

/** The best way, check by check: minutes, what is found, what stands in front then. */
export function PreviewPath({ knowledge, shown }: Props) {
  return (
    <ol className="best-way">
      {shown.path.map((step, k) => (
        <li key={`${k}-${step.id}`}>
          {step.id.startsWith("ask:") && "Ask: "}
          {capital(nameOfCheck(knowledge, step.id))}{" "}
          <span className="soft">({minutesWords(step.minutes)})</span>:{" "}
          <strong>{foundWords(knowledge, step)}</strong>
          {step.inFront !== undefined && (
            <span className="small soft">
              {" "}
              In front then: {nameOfRepair(knowledge, step.inFront.repair)}, {percent(step.inFront.chance)}.
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}

/** What a step found, in words: what is there by name; the rest is said to be in order. */
export function foundWords(knowledge: Knowledge, { id, found }: PreviewStep): string {
  const [first] = found;
  if (first === undefined) return "nothing";
  if (id.startsWith("ask:") || found.length === 1) return `${stateWords(first)}.`;
  const place = id.split("@")[1];
  const there = found.filter((f) => f.state === "present");
  if (there.length === 0) return "nothing wrong there.";
  return `${there.map((f) => `${nameOfFindingAt(knowledge, f.finding, place)}: ${stateWords(f)}`).join("; ")}.`;
}
