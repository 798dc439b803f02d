"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import type { OpenCase } from "../../store/use-case.ts";
import type { Units } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { hzWords, nameOfShaft, speedWords } from "./order-table.tsx";
import { TellApart } from "./tell-apart.tsx";
import { TurningTakeOver } from "./turning-take-over.tsx";

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
      <TellApart knowledge={knowledge} apart={answer.apart} />
      {open !== undefined && <TakeOver {...props} open={open} />}
    </>
  );
}

/** Findings that fit every measurement, and whether the figures are in the case already. */
function TakeOver({ answer, turning, open, ...props }: Props & { readonly open: OpenCase }) {
  const findings = [...new Set(answer.fits.flatMap(({ finding }) => finding ?? []))];
  const kept = turning !== undefined && JSON.stringify(turning) === JSON.stringify(open.state.turning);
  return <TurningTakeOver {...props} open={open} findings={findings} keep={kept ? undefined : turning} />;
}
