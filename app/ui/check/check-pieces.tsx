import type { ReactNode } from "react";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { CompiledCheck, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace, nameOfSetUp } from "../../text/names.ts";
import { WHO_WORDS } from "../../text/who-words.ts";
import { Fact } from "../fact.tsx";

interface CheckProps {
  readonly check: CompiledCheck;
}

interface OnCardProps {
  readonly knowledge: Knowledge;
  /** A check or, without one, a question. */
  readonly proposed: Pick<ProposedCheck, "check" | "place" | "name" | "minutes" | "setUpMinutes" | "setUp">;
}

/** What the open card is of, and where on the car when that can be at several places. */
export function CheckName({ knowledge, proposed }: OnCardProps) {
  const { check, name, place } = proposed;
  return (
    <p className="check-name" id="open-check" tabIndex={-1}>
      {check === undefined ? `Ask: ${name}` : capital(name)}
      {check !== undefined && check.places.length > 1 && (
        <>
          , <strong>{nameOfPlace(knowledge, place)}</strong>
        </>
      )}
    </p>
  );
}

/** What a check takes: minutes, the state of the car, who and with what; of a question its minutes. */
export function CheckTakes({ knowledge, proposed }: OnCardProps) {
  const { check, minutes, setUpMinutes, setUp } = proposed;
  return (
    <dl className="takes">
      <Fact name="Takes">
        {minutesWords(minutes)}
        {setUpMinutes > 0 && ` + ${minutesWords(setUpMinutes)} to set up`}
      </Fact>
      {check !== undefined && (
        <>
          <Fact name="Car">{nameOfSetUp(knowledge, setUp)}</Fact>
          <WhoAndTools check={check} />
        </>
      )}
    </dl>
  );
}

/** Cautions of a check, with the way to say that they were read; nothing when it has none. */
export function CheckCautions({
  knowledge,
  check,
  children,
}: CheckProps & { readonly knowledge: Knowledge; readonly children: ReactNode }) {
  const cautions = check.cautions.flatMap((id) => knowledge.cautions.filter((c) => c.id === id));
  if (cautions.length === 0) return null;
  return (
    <div className="cautions" role="group" aria-label="Cautions">
      <h3>Before you start</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution.id}>{caution.text}</li>
        ))}
      </ul>
      {children}
    </div>
  );
}

/** Who makes a check, and with what. */
export function WhoAndTools({ check }: CheckProps) {
  return (
    <>
      <Fact name="Who">
        {WHO_WORDS[check.who]}
        {check.helper && ", with a helper"}
      </Fact>
      <Fact name="Tools">{check.tools.length === 0 ? "none" : check.tools.join(", ")}</Fact>
    </>
  );
}

/** How a check is made, and what is normal. */
export function CheckSteps({ check }: CheckProps) {
  return (
    <>
      <ol className="steps">
        {check.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>
        <strong>Normal:</strong> {check.normal}
      </p>
    </>
  );
}
