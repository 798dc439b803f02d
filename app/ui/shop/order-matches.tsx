"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import type { OpenCase } from "../../store/use-case.ts";
import type { Units } from "../../text/amounts.ts";
import { capital, nameOfFinding } from "../../text/names.ts";
import { hzWords, nameOfShaft, speedWords } from "./order-table.tsx";

interface Props {
  readonly knowledge: Knowledge;
  readonly answer: OrdersAnswer;
  readonly units: Units;
  readonly turning: CaseState["turning"];
  readonly open: OpenCase | undefined;
  /** The figures are in the case now. */
  readonly onKept: () => void;
}

/** What the measured frequencies may be, and taking it over into the case. */
export function OrderMatches(props: Props) {
  const { knowledge, answer, units, open } = props;
  return (
    <>
      <ul className="plain-list">
        {answer.measured.map(({ hz, speedKmh, matches }, i) => (
          <li key={i}>
            <strong>
              {hz} Hz at {speedWords(speedKmh, units)}
            </strong>
            {matches.length === 0 ? (
              <p>Nothing that is listed turns so. Look at the figures, or at what stands still and hums.</p>
            ) : (
              <ul>
                {matches.map((m) => (
                  <li key={`${m.shaft} ${m.order}`}>
                    {capital(nameOfShaft(knowledge, m.shaft))}, order {m.order}: {hzWords(m.hz)} Hz,{" "}
                    {Math.abs(m.offPercent).toFixed(1)} % {m.offPercent < 0 ? "below" : "above"}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
      {answer.measured.length > 1 && answer.fits.length === 0 && (
        <p className="notice">
          No one order fits every measurement: more than one thing shakes, or a figure is off.
        </p>
      )}
      {answer.apart.length > 0 && (
        <>
          <h3>More than one fits. How to tell them apart</h3>
          <dl>
            {answer.apart.map(({ shaft, how }) => (
              <div key={shaft}>
                <dt>
                  <strong>{capital(nameOfShaft(knowledge, shaft))}</strong>
                </dt>
                <dd>{how}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
      {open !== undefined && <TakeOver {...props} open={open} />}
    </>
  );
}

/** Findings that the figures may be; none counts until a person takes it. */
function TakeOver({ knowledge, answer, turning, open, onKept }: Props & { readonly open: OpenCase }) {
  const { state, append } = open;
  const findings = [...new Set(answer.fits.flatMap(({ finding }) => finding ?? []))];
  const kept = turning !== undefined && JSON.stringify(turning) === JSON.stringify(state.turning);
  const keep = kept || turning === undefined ? [] : [{ kind: "turning", ...turning } as const];
  return (
    <>
      {findings.length > 0 && (
        <div className="proposals">
          <p>
            <strong>Is this what was measured?</strong> Nothing counts until you take it.
          </p>
          <ul className="plain-list">
            {findings.map((finding) => {
              const name = nameOfFinding(knowledge, finding);
              const is = state.answers.find((a) => a.finding === finding);
              const taken = is?.state === "present" && is.by === "check";
              return (
                <li key={finding} className="proposal">
                  <div>
                    <strong>{capital(name)}</strong>
                  </div>
                  {taken ? (
                    <span role="status">Taken over into the case</span>
                  ) : (
                    <button
                      type="button"
                      aria-label={`Take it: ${name}`}
                      onClick={() => {
                        append(...keep, { kind: "answered", finding, state: "present", how: "check" });
                        onKept();
                      }}
                    >
                      Take it
                    </button>
                  )}
                </li>
              );
            })}
          </ul>
        </div>
      )}
      {kept ? (
        <p className="small" role="status">
          These figures are kept in the case.
        </p>
      ) : (
        <button
          type="button"
          className="wide"
          onClick={() => {
            append(...keep);
            onKept();
          }}
        >
          Keep the figures in the case
        </button>
      )}
    </>
  );
}
