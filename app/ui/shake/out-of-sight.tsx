import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import type { Units } from "../../text/amounts.ts";
import { hzWords, nameOfShaft, speedWords } from "../shop/order-table.tsx";

/** Vibrations that stand for a finding and are too fast for this sensor at this speed: not seeing them says nothing. */
export function OutOfSight({
  knowledge,
  answer: { orders, speedKmh },
  highestHz,
  units,
}: {
  readonly knowledge: Knowledge;
  readonly answer: OrdersAnswer;
  readonly highestHz: number;
  readonly units: Units;
}) {
  // One finding may stand for several orders, slowest first: the slowest stands for them all.
  const unseen = orders
    .filter(({ finding }, i) => finding !== undefined && orders.findIndex((o) => o.finding === finding) === i)
    .filter(({ hz }) => hz > highestHz);
  if (unseen.length === 0) return null;
  return (
    <div className="notice">
      <p>Too fast for this sensor here, so their absence says nothing:</p>
      <ul>
        {unseen.map(({ shaft, order, hz }) => (
          <li key={`${shaft} ${order}`}>
            {nameOfShaft(knowledge, shaft)}, order {order}: {hzWords(hz)} Hz
            {shaft !== "engine" && `; it can be seen below ${speedWords((speedKmh * highestHz) / hz, units)}`}
          </li>
        ))}
      </ul>
    </div>
  );
}
