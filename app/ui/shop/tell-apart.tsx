import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { capital } from "../../text/names.ts";
import { nameOfShaft } from "./order-table.tsx";

/** How to tell what turns apart where more than one shaft fits; nothing where none or one does. */
export function TellApart({
  knowledge,
  apart,
}: {
  readonly knowledge: Knowledge;
  readonly apart: OrdersAnswer["apart"];
}) {
  if (apart.length === 0) return null;
  return (
    <>
      <h3>More than one fits. How to tell them apart</h3>
      <dl>
        {apart.map(({ shaft, how }) => (
          <div key={shaft}>
            <dt>
              <strong>{capital(nameOfShaft(knowledge, shaft))}</strong>
            </dt>
            <dd>{how}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
