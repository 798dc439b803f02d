"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Doubted, Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { capital, nameOfCheck } from "../../text/names.ts";
import { goToPart } from "../sheet-part.tsx";

interface Props {
  readonly knowledge: Knowledge;
  readonly situation: Situation;
  /** Opens a check, so that its result can be given anew. */
  readonly onCheck: (id: string) => void;
}

/** How far the ranking can be trusted: whether it is steady, which answer does not fit, whether anything explains it. */
export function DoubtLines({ knowledge, situation, onCheck }: Props) {
  const doubt = useAnswer("doubt", situation, JSON.stringify(situation));
  if (doubt.failed !== undefined && doubt.value === undefined) {
    return <p className="trouble">How far this can be trusted could not be worked out: {doubt.failed}</p>;
  }
  if (doubt.value === undefined) {
    return <p className="small soft">Working out how far this can be trusted ...</p>;
  }
  const { steady, lookAgain, unexplained } = doubt.value;
  return (
    <div className="doubt" aria-busy={doubt.busy}>
      {steady !== undefined && <p data-testid="steady">{steady.words}</p>}
      {unexplained !== undefined && <p className="notice">{unexplained}</p>}
      {lookAgain !== undefined && <LookAgain knowledge={knowledge} lookAgain={lookAgain} onCheck={onCheck} />}
    </div>
  );
}

function LookAgain({
  knowledge,
  lookAgain,
  onCheck,
}: Pick<Props, "knowledge" | "onCheck"> & { readonly lookAgain: NonNullable<Doubted["lookAgain"]> }) {
  const check = lookAgain.by === "check" ? checkThatSettles(knowledge, lookAgain.finding) : undefined;
  return (
    <section className="notice" aria-labelledby="look-again">
      <h3 id="look-again">Look at this again</h3>
      <p>{capital(lookAgain.words)}</p>
      {check !== undefined && (
        <button type="button" onClick={() => onCheck(check)}>
          Open the check again: {nameOfCheck(knowledge, check)}
        </button>
      )}
      {check === undefined && (
        <button type="button" onClick={() => goToPart(lookAgain.by === "check" ? "timeline" : "complaint")}>
          {lookAgain.by === "check" ? "Go to what was entered" : "Go to what was told"}
        </button>
      )}
      <p className="small soft">Nothing is changed until you give another answer or undo this one.</p>
    </section>
  );
}

/** A check that settles the finding at its place, by the id that opens it. */
function checkThatSettles(knowledge: Knowledge, finding: string): string | undefined {
  const [observation = "", place] = finding.split("@");
  const check = knowledge.checks.find(
    (c) => c.settles.includes(observation) && (place === undefined || c.places.includes(place)),
  );
  return check === undefined ? undefined : `${check.id}@${place ?? check.places[0]}`;
}
