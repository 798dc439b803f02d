import { weakestFaults } from "../../../lib/knowledge/index.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";
import { percent } from "../../text/chance-words.ts";
import { minutesWords } from "../../text/amounts.ts";
import { nameOfRecord } from "../../text/record-words.ts";
import { FaultLinks } from "./fault-links.tsx";

/** Share of simulated cases that a fault should end at the right part in. */
const GOAL = 0.9;

/** Faults whose simulated cases end at the right part least often. */
export function WeakestPart({ health: { knowledge, reach } }: { readonly health: SiteHealth }) {
  if (reach === undefined) {
    return <p className="notice">Not measured yet for version {knowledge.version}.</p>;
  }
  const right = reach.faults.reduce((sum, fault) => sum + fault.right, 0);
  const cars = reach.faults.reduce((sum, fault) => sum + fault.cars, 0);
  const weakest = weakestFaults(reach, GOAL);
  return (
    <>
      <p>{reach.about}</p>
      <p>
        {cars} simulated cases from {reach.faults.length} faults: {percent(right / cars)} end at the right
        part. {weakest.length === 0 ? "No fault is" : `${weakest.length} faults are`} below {percent(GOAL)}.
      </p>
      <FaultLinks
        faults={weakest.map(({ fault, cars: played, right: found, minutes }) => ({
          id: fault,
          name: nameOfRecord(knowledge, "faults", fault),
          part: knowledge.faults.find(({ id }) => id === fault)?.part ?? "",
          beside: (
            <span className="small number">
              {found} of {played} right, {minutesWords(minutes)}
            </span>
          ),
        }))}
      />
    </>
  );
}
