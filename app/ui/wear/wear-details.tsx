import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { shownDistance, type Units } from "../../text/amounts.ts";
import { Fact } from "../fact.tsx";
import { columnPercent, type WearRow } from "./wear-rows.ts";
import { WearCurve } from "./wear-curve.tsx";

const STATUS = { seen: "text seen", memory: "from memory", none: "no published figure" } as const;

/** Curve, Weibull parameters and their basis of one line. */
export function WearDetails({
  knowledge,
  row: { line },
  units,
}: {
  readonly knowledge: Knowledge;
  readonly row: WearRow;
  readonly units: Units;
}) {
  const { life, age, modifiers } = line;
  const source = knowledge.sources.find((s) => s.id === life.basis);
  const characteristic =
    life.unit === "km"
      ? `${shownDistance(life.characteristic, units).toLocaleString("en-GB")} ${units.distance}`
      : `${life.characteristic} years`;
  const ran = `${shownDistance(age.km, units).toLocaleString("en-GB")} ${units.distance}, ${age.years.toFixed(1)} years`;
  return (
    <>
      <WearCurve line={line} units={units} />
      <dl className="wear-facts">
        <Fact name="Weibull life">
          63 % have failed by {characteristic}; shape {life.shape}
        </Fact>
        <Fact name="Basis">
          {source?.title ?? life.basis}
          {source !== undefined && ` (${STATUS[source.status]})`}
        </Fact>
        <Fact name="Has run">
          {ran}
          {age.ownAge ? ", as entered" : ", as the car, or renewed unknown to us"}
        </Fact>
        {line.onCar < 0.995 && (
          <Fact name="On the car">on {columnPercent(line.onCar)} of such cars; the chances count that</Fact>
        )}
        {modifiers.length > 0 && (
          <Fact name="Moved by">
            {modifiers
              .map(
                ({ why, life: times, chance }) =>
                  `${why}${times === 1 ? "" : ` (life times ${times})`}${chance > 0.995 ? "" : `, on ${columnPercent(chance)} of such cars`}`,
              )
              .join("; ")}
          </Fact>
        )}
      </dl>
    </>
  );
}
