import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { shownDistance, type Units } from "../../text/amounts.ts";
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
        <div>
          <dt>Weibull life</dt>
          <dd>
            63 % have failed by {characteristic}; shape {life.shape}
          </dd>
        </div>
        <div>
          <dt>Basis</dt>
          <dd>
            {source?.title ?? life.basis}
            {source !== undefined && ` (${STATUS[source.status]})`}
          </dd>
        </div>
        <div>
          <dt>Has run</dt>
          <dd>
            {ran}
            {age.ownAge ? ", as entered" : ", as the car, or renewed unknown to us"}
          </dd>
        </div>
        {line.onCar < 0.995 && (
          <div>
            <dt>On the car</dt>
            <dd>on {columnPercent(line.onCar)} of such cars; the chances count that</dd>
          </div>
        )}
        {modifiers.length > 0 && (
          <div>
            <dt>Moved by</dt>
            <dd>
              {modifiers
                .map(
                  ({ why, life: times, chance }) =>
                    `${why}${times === 1 ? "" : ` (life times ${times})`}${chance > 0.995 ? "" : `, on ${columnPercent(chance)} of such cars`}`,
                )
                .join("; ")}
            </dd>
          </div>
        )}
      </dl>
    </>
  );
}
