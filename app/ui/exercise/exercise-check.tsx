"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { useKept } from "../../store/use-kept.ts";
import type { Settings } from "../../store/use-settings.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace, nameOfSetUp } from "../../text/names.ts";
import { CheckSteps, WhoAndTools } from "../check/check-takes.tsx";
import { whyForbidden } from "../check/forbidden.ts";
import { Fact } from "../fact.tsx";
import { notHere } from "./not-here.ts";
import type { StepOnCard } from "./step-on-card.ts";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
  readonly proposed: StepOnCard;
  readonly notices: Ranked["notices"];
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  /** It was made; show the next one. */
  readonly onDone: () => void;
}

/** One check of an exercise: what it takes, cautions to tick, steps, and the one button that makes it on the invented car. */
export function ExerciseCheck(props: Props) {
  const { knowledge, attempt, work, proposed, notices, onDone } = props;
  const { check, place } = proposed;
  const keptAs = `${attempt.id}/cautions/${proposed.id}`;
  const [read, setRead] = useKept(keptAs, false);
  const cautions = check?.cautions.flatMap((id) => knowledge.cautions.filter((c) => c.id === id)) ?? [];
  const forbidden = check && whyForbidden(knowledge, attempt.state, notices, check, place);
  const missing = check && notHere(knowledge, attempt.exercise, check);
  const question = check === undefined;
  const make = async (): Promise<void> => {
    const made = await work.send({ kind: "checks", check: proposed.id, cautionsRead: read });
    if (made) onDone();
  };
  return (
    <div className="check">
      <p className="check-name" id="open-check" tabIndex={-1}>
        {question ? `Ask: ${proposed.name}` : capital(proposed.name)}
        {check !== undefined && check.places.length > 1 && (
          <>
            , <strong>{nameOfPlace(knowledge, place)}</strong>
          </>
        )}
      </p>
      <dl className="takes">
        <Fact name="Takes">
          {minutesWords(proposed.minutes)}
          {proposed.setUpMinutes > 0 && ` + ${minutesWords(proposed.setUpMinutes)} to set up`}
        </Fact>
        {check !== undefined && (
          <>
            <Fact name="Car">{nameOfSetUp(knowledge, proposed.setUp)}</Fact>
            <WhoAndTools check={check} />
          </>
        )}
      </dl>
      {missing !== undefined && (
        <p className="notice">
          <strong>Not in this exercise:</strong> {missing}.
        </p>
      )}
      {forbidden !== undefined && (
        <p className="trouble">
          <strong>{forbidden}</strong> On a real car, do not. Made here, it counts as unsafe.
        </p>
      )}
      {cautions.length > 0 && (
        <div className="cautions" role="group" aria-label="Cautions">
          <h3>Before you start</h3>
          <ul>
            {cautions.map((caution) => (
              <li key={caution.id}>{caution.text}</li>
            ))}
          </ul>
          <label className="tick">
            <input type="checkbox" checked={read} onChange={(event) => setRead(event.target.checked)} />I have
            read this and would do it
          </label>
        </div>
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
        disabled={work.busy || missing !== undefined}
        onClick={() => void make()}
      >
        {work.busy ? "Working ..." : question ? "Ask this" : "Make this check"}
      </button>
    </div>
  );
}
