"use client";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace, nameOfSetUp } from "../../text/names.ts";
import { checkHref } from "../../text/page-links.ts";
import { AboutLink } from "../case/about-link.tsx";
import { Fact } from "../fact.tsx";
import { Fold } from "../fold.tsx";
import { NotAtHand } from "./at-hand.tsx";
import { CheckSteps, WhoAndTools } from "./check-takes.tsx";
import { CannotBeDone } from "./cannot-be-done.tsx";
import { WorkedOutLinks } from "../shop/worked-out-links.tsx";
import type { CheckProps } from "./check-props.ts";
import { whyForbidden } from "./forbidden.ts";
import { Previews } from "./previews.tsx";
import { ResultForm } from "./result-form.tsx";

/** One check or question: what it takes, cautions, steps, what it would tell, and its result. */
export function CheckCard(props: CheckProps) {
  const { knowledge, state, notices, proposed, situation } = props;
  const { check, place } = proposed;
  const forbidden = check && whyForbidden(knowledge, state, notices, check, place);
  if (forbidden !== undefined)
    return (
      <div className="check">
        <p className="check-name" id="open-check" tabIndex={-1}>
          {capital(proposed.name)}
        </p>
        <p className="trouble">
          <strong>{forbidden}</strong>
        </p>
      </div>
    );
  return (
    <div className="check">
      <CheckHead {...props} />
      <WorkedOutLinks {...props} />
      <ResultForm {...props} />
      <Fold className="what-it-tells" openAtFirst title="What each result would tell">
        <Previews knowledge={knowledge} proposed={proposed} situation={situation} />
      </Fold>
      {proposed.kind === "check" && <CannotBeDone {...props} />}
    </div>
  );
}

function CheckHead(props: CheckProps) {
  const { knowledge, state, proposed, append } = props;
  const { check } = proposed;
  if (check === undefined)
    return (
      <p className="check-name" id="open-check" tabIndex={-1}>
        Ask: {proposed.name}
      </p>
    );
  const cautions = check.cautions.flatMap((id) => knowledge.cautions.filter((c) => c.id === id));
  const read = state.cautionsRead.includes(proposed.id);
  return (
    <>
      <p className="check-name" id="open-check" tabIndex={-1}>
        {capital(proposed.name)}
        {check.places.length > 1 && (
          <>
            , <strong>{nameOfPlace(knowledge, proposed.place)}</strong>
          </>
        )}
      </p>
      <NotAtHand {...props} />
      <dl className="takes">
        <Fact name="Takes">
          {minutesWords(proposed.minutes)}
          {proposed.setUpMinutes > 0 && ` + ${minutesWords(proposed.setUpMinutes)} to set up`}
        </Fact>
        <Fact name="Car">{nameOfSetUp(knowledge, proposed.setUp)}</Fact>
        <WhoAndTools check={check} />
      </dl>
      {cautions.length > 0 && (
        <div className="cautions" role="group" aria-label="Cautions">
          <h3>Before you start</h3>
          <ul>
            {cautions.map((caution) => (
              <li key={caution.id}>{caution.text}</li>
            ))}
          </ul>
          {read ? (
            <p className="small">Read and noted in the case.</p>
          ) : (
            <button type="button" onClick={() => append({ kind: "cautions-read", check: proposed.id })}>
              I have read this
            </button>
          )}
        </div>
      )}
      <p>
        <AboutLink from="next" href={checkHref(check.id)}>
          About this check
        </AboutLink>
      </p>
      <h3>Steps</h3>
      <CheckSteps check={check} />
    </>
  );
}
