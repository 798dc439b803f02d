import { type ReachedFault, weakestFaults } from "../../../lib/knowledge/index.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";
import { minutesWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { nameOfRecord } from "../../text/record-words.ts";
import { FaultLinks } from "./fault-links.tsx";

/** Share of simulated cases that a fault should end at the right part in. */
const GOAL = 0.9;

/** With fewer cases a single miss puts a fault below the goal. */
const ENOUGH = 20;

/** Faults whose simulated cases end at the right part least often. */
export function WeakestPart({ health }: { readonly health: SiteHealth }) {
  const { knowledge, reach, frozen } = health;
  if (reach === undefined) {
    return <p className="notice">Not measured yet for version {knowledge.version}.</p>;
  }
  const { faults } = reach;
  // Each fault counts once: the worst are played again with more cases.
  const mean = faults.reduce((sum, { right, cars }) => sum + right / cars, 0) / faults.length;
  const measured = new Set(faults.map(({ fault }) => fault));
  const missing = knowledge.faults.filter(({ id }) => !measured.has(id));
  const weakest = weakestFaults(reach, GOAL);
  const known = weakest.filter(({ cars }) => cars >= ENOUGH);
  const open = weakest.filter(({ cars }) => cars < ENOUGH);
  return (
    <>
      <p>{reach.about}</p>
      <p>
        {faults.length} faults, each counted once: {percent(mean)} of their cases end at the right part.
        {missing.length > 0 &&
          ` Not measured: ${missing.map(({ id }) => nameOfRecord(knowledge, "faults", id)).join("; ")}.`}
        {!frozen && ` Version ${knowledge.version} is not frozen: its records may have changed since.`}
      </p>
      <h3 id="weakest-known">
        Below {percent(GOAL)} in {ENOUGH} cases or more: {known.length}
      </h3>
      <Faults health={health} faults={known} />
      {open.length > 0 && (
        <details>
          <summary>
            <span>
              Missed at least once in fewer cases, too few to say{" "}
              <span className="soft">({open.length})</span>
            </span>
          </summary>
          <Faults health={health} faults={open} />
        </details>
      )}
    </>
  );
}

function Faults({
  health: { knowledge },
  faults,
}: {
  readonly health: SiteHealth;
  readonly faults: readonly ReachedFault[];
}) {
  return (
    <FaultLinks
      faults={faults.map(({ fault, cars, right, minutes }) => ({
        id: fault,
        name: nameOfRecord(knowledge, "faults", fault),
        part: knowledge.faults.find(({ id }) => id === fault)?.part ?? "",
        beside: (
          <span className="small number strength">
            {right} of {cars} right, {minutesWords(minutes)}
          </span>
        ),
      }))}
    />
  );
}
