"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { lacksOf } from "../../../lib/training/not-here.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { useKept } from "../../store/use-kept.ts";
import { CheckCautions, CheckName, CheckSteps, CheckTakes } from "../check/check-pieces.tsx";
import { whyForbidden } from "../check/forbidden.ts";
import type { StepOnCard } from "./step-on-card.ts";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
  readonly proposed: StepOnCard;
  readonly notices: Ranked["notices"];
  /** It was made; show the next one. */
  readonly onDone: () => void;
}

/** One check of an exercise: what it takes, cautions to tick, steps, and the one button that makes it on the invented car. */
export function ExerciseCheck(props: Props) {
  const { knowledge, attempt, work, proposed, notices, onDone } = props;
  const { check, place } = proposed;
  const keptAs = `${attempt.id}/cautions/${proposed.id}`;
  const [read, setRead] = useKept(keptAs, false);
  const forbidden = check && whyForbidden(knowledge, attempt.state, notices, check, place);
  const lacks = check === undefined ? [] : lacksOf(knowledge, attempt.exercise.terms, check);
  const question = check === undefined;
  const make = async (): Promise<void> => {
    const made = await work.send({ kind: "checks", check: proposed.id, cautionsRead: read });
    if (made) onDone();
  };
  return (
    <div className="check">
      <CheckName knowledge={knowledge} proposed={proposed} />
      <CheckTakes knowledge={knowledge} proposed={proposed} />
      {lacks.length > 0 && (
        <p className="notice">
          <strong>Not in this exercise:</strong> {lacks.join("; ")}.
        </p>
      )}
      {forbidden !== undefined && (
        <p className="trouble">
          <strong>{forbidden}</strong> On a real car, do not. Made here, it counts as unsafe.
        </p>
      )}
      {check !== undefined && (
        <CheckCautions knowledge={knowledge} check={check}>
          <label className="tick">
            <input type="checkbox" checked={read} onChange={(event) => setRead(event.target.checked)} />I have
            read this and would do it
          </label>
        </CheckCautions>
      )}
      {check !== undefined && (
        <>
          <h3>Steps</h3>
          <CheckSteps check={check} />
        </>
      )}
      <button
        type="button"
        id="make-check"
        className="main wide"
        disabled={work.busy || lacks.length > 0}
        onClick={() => void make()}
      >
        {work.busy ? "Working ..." : question ? "Ask this" : "Make this check"}
      </button>
    </div>
  );
}
