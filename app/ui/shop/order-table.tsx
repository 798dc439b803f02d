import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { exactDistanceInKm, speedUnit, type Units } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";

/** Hz with one decimal. */
export function hzWords(hz: number): string {
  return hz.toFixed(1);
}

/** A speed as the user reads it. */
export function speedWords(kmh: number, units: Units): string {
  return `${Number((kmh / exactDistanceInKm(1, units)).toFixed(1))} ${speedUnit(units)}`;
}

/** Name of what turns. */
export function nameOfShaft(knowledge: Knowledge, shaft: string): string {
  return knowledge.orders.shafts.find((s) => s.shaft === shaft)?.name ?? shaft;
}

/** Orders of everything that turns, in Hz. */
export function OrderTable({
  knowledge,
  answer,
  units,
}: {
  readonly knowledge: Knowledge;
  readonly answer: OrdersAnswer;
  readonly units: Units;
}) {
  const { tyre, circumferenceMm, turnsPerKm, speedKmh, orders } = answer;
  const shafts = knowledge.orders.shafts
    .map(({ shaft }) => shaft)
    .filter((shaft) => orders.some((o) => o.shaft === shaft));
  const steps = [...new Set(orders.map((o) => o.order))].sort((a, b) => a - b);
  return (
    <>
      <p>
        {tyre !== undefined && `${tyre.size}: ${Math.round(tyre.designDiameterMm)} mm across new, `}
        rolls {Math.round(circumferenceMm)} mm a turn, {Math.round(turnsPerKm)} turns a km.
      </p>
      <table className="figures">
        <caption className="small soft">Hz at {speedWords(speedKmh, units)}, by vibrations a turn</caption>
        <thead>
          <tr>
            <th scope="col">Order</th>
            {shafts.map((shaft) => (
              <th key={shaft} scope="col" className="figure">
                {capital(nameOfShaft(knowledge, shaft))}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {steps.map((order) => (
            <tr key={order}>
              <th scope="row">{order}</th>
              {shafts.map((shaft) => {
                const own = orders.find((o) => o.shaft === shaft && o.order === order);
                return (
                  <td key={shaft} className="figure">
                    {own === undefined ? "" : hzWords(own.hz)}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">
        Worn, soft or loaded tyres roll up to some 3 % less.
        {shafts.length < knowledge.orders.shafts.length &&
          " A shaft that is not listed needs its final drive, gear or engine speed, or is not on this car."}
      </p>
    </>
  );
}
