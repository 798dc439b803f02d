import Link from "next/link";
import type { CheckProps } from "../check/check-props.ts";

/** On the card of a check whose result is worked out from a measurement: the way to where that is done. */
export function WorkedOutLinks({ knowledge, state, proposed }: CheckProps) {
  const settled = new Set(proposed.settles.map(({ finding }) => finding.split("@")[0] ?? ""));
  const turning = knowledge.orders.findings.some(({ observation }) => settled.has(observation));
  const quantity = knowledge.limits.quantities.find(
    ({ observation }) => observation !== undefined && settled.has(observation),
  );
  if (!turning && quantity === undefined) return null;
  const of = `case=${encodeURIComponent(state.caseId)}`;
  const place = proposed.place === undefined ? "" : `&place=${proposed.place}`;
  return (
    <p className="row no-print">
      {turning && (
        <Link className="button" href={`/shop/rotating?${of}`}>
          Which part turns at that Hz?
        </Link>
      )}
      {turning && (
        <Link className="button" href={`/shop/shake?${of}`}>
          Measure it with a phone
        </Link>
      )}
      {quantity !== undefined && (
        <Link className="button" href={`/shop/play?${of}&quantity=${quantity.id}${place}`}>
          Degrees and limits
        </Link>
      )}
    </p>
  );
}
