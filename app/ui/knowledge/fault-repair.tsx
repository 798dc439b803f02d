import type { FaultEntry } from "../../../lib/knowledge/pages/index.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { CautionBox } from "./caution-box.tsx";
import { Row } from "./row.tsx";

const WHERE = {
  "same-place": "at the same place",
  "other-side": "on the other side",
  "both-sides": "on both sides",
} as const;

/** The repair: work, what is renewed with it, what is used once, what comes after. */
export function FaultRepair({ entry }: { readonly entry: FaultEntry }) {
  const { remedy } = entry.fault;
  return (
    <>
      <CautionBox texts={entry.cautions} />
      <p>
        {remedy.work} <span className="soft">About {minutesWords(remedy.minutes)}.</span>
      </p>
      {entry.paired.length > 0 && (
        <>
          <h4>Renew with it</h4>
          <ul className="know-list">
            {entry.paired.map(({ part, where, why }) => (
              <Row
                key={`${part.id} ${where}`}
                href={partHref(part.id)}
                name={`${capital(part.name)}, ${WHERE[where]}`}
                note={why}
              />
            ))}
          </ul>
        </>
      )}
      {remedy.oneUse.length > 0 && (
        <>
          <h4>Use once, then new</h4>
          <ul>
            {remedy.oneUse.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </>
      )}
      {(remedy.tightenAtRideHeight || remedy.alignment || remedy.lookAtToo.length > 0) && (
        <ul>
          {remedy.tightenAtRideHeight && (
            <li>
              <strong>Tighten rubber bushes at ride height</strong>, the wheels carrying the car.
            </li>
          )}
          {remedy.alignment && <li>Measure and set the wheel alignment afterwards.</li>}
          {remedy.lookAtToo.map((item) => (
            <li key={item}>Look at too: {item}</li>
          ))}
        </ul>
      )}
      <p className="small soft">Torques, fluids and order of work are the maker&apos;s.</p>
    </>
  );
}
