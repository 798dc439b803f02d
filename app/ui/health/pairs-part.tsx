import { APART_RATIO, type InseparablePair } from "../../../lib/knowledge/index.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";
import { capital } from "../../text/names.ts";
import { nameOfRecord } from "../../text/record-words.ts";

/** Pairs that no check tells apart, and those that come nearest to it. */
export function PairsPart({ health }: { readonly health: SiteHealth }) {
  const same = health.pairs.filter(({ factor }) => factor < APART_RATIO);
  const near = health.pairs.filter(({ factor }) => factor >= APART_RATIO);
  return (
    <>
      <p>
        {same.length === 0 ? "None is inseparable: for" : "For"} any two faults that can be on one car, the
        most telling result of a check is at least {APART_RATIO} times likelier from one than from the other
        {same.length === 0 ? "." : `, except these ${same.length}:`}
      </p>
      <Pairs health={health} pairs={same} />
      {near.length > 0 && (
        <>
          <h3 id="least-told-apart">Least told apart</h3>
          <p>Pairs whose most telling result is less than {health.listedWithin} times likelier from one.</p>
          <Pairs health={health} pairs={near} />
        </>
      )}
    </>
  );
}

function Pairs({
  health,
  pairs,
}: {
  readonly health: SiteHealth;
  readonly pairs: readonly InseparablePair[];
}) {
  const { knowledge } = health;
  return (
    <ul className="know-list">
      {pairs.map(({ faults, factor, complaints, why }) => (
        <li key={faults.join(" ")} className="version-line">
          <p>
            {capital(nameOfRecord(knowledge, "faults", faults[0]))} and{" "}
            {nameOfRecord(knowledge, "faults", faults[1])}
          </p>
          <p className="small soft">
            Best result of a check: <span className="number">{factor.toFixed(factor < 10 ? 1 : 0)}</span>{" "}
            times likelier.{" "}
            {complaints.length === 0
              ? "They share no complaint."
              : `Both show as: ${complaints.map((id) => nameOfRecord(knowledge, "complaints", id)).join(", ")}.`}{" "}
            {why}
          </p>
        </li>
      ))}
    </ul>
  );
}
