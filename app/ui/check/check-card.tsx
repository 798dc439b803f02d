"use client";
import { capital } from "../../text/names.ts";
import { checkHref } from "../../text/page-links.ts";
import { AboutLink } from "../case/about-link.tsx";
import { Fold } from "../fold.tsx";
import { NotAtHand } from "./at-hand.tsx";
import { CheckCautions, CheckName, CheckSteps, CheckTakes } from "./check-pieces.tsx";
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
  if (check === undefined) return <CheckName knowledge={knowledge} proposed={proposed} />;
  const read = state.cautionsRead.includes(proposed.id);
  return (
    <>
      <CheckName knowledge={knowledge} proposed={proposed} />
      <NotAtHand {...props} />
      <CheckTakes knowledge={knowledge} proposed={proposed} />
      <CheckCautions knowledge={knowledge} check={check}>
        {read ? (
          <p className="small">Read and noted in the case.</p>
        ) : (
          <button type="button" onClick={() => append({ kind: "cautions-read", check: proposed.id })}>
            I have read this
          </button>
        )}
      </CheckCautions>
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
