import type { HeldSpeed } from "../../../lib/car/held-speed.ts";
import type { OrdersRequest } from "../../../lib/requests/orders-request.ts";
import type { Units } from "../../text/amounts.ts";
import { speedWords } from "../shop/order-table.tsx";

/** How evenly the car ran, and what was done about it. */
export function SpeedSaid({
  speed,
  followed,
  units,
}: {
  readonly speed: HeldSpeed;
  readonly followed: boolean;
  readonly units: Units;
}) {
  const { meanKmh, leastKmh, mostKmh, sharpKmh, held } = speed;
  const range = `Speed by GPS: ${speedWords(meanKmh, units)} on average, from ${speedWords(leastKmh, units)} to ${speedWords(mostKmh, units)}.`;
  if (held === "uneven")
    return (
      <p className="trouble" role="status">
        {range} That is too uneven: a rate would be off by more than the orders allow, and another part could
        be named. Record again at one speed. Nothing can be taken over from this recording.
      </p>
    );
  return (
    <p className="small">
      {range}
      {sharpKmh !== undefined &&
        held !== "steady" &&
        ` Over this length a line stays sharp within ${speedWords(sharpKmh, units)}.`}
      {followed &&
        " The speed was followed: what turns with the wheels stands sharp, anything else is blurred."}
    </p>
  );
}

/** Speeds that nothing in the recording bears out: a figure left over from another drive would name the wrong part. */
export function TypedSpeed({ request, units }: { readonly request: OrdersRequest; readonly units: Units }) {
  const { speedKmh, rpm } = request;
  if (typeof speedKmh !== "number") return null;
  return (
    <p className="small">
      Taken at {speedWords(speedKmh, units)}
      {typeof rpm === "number" && ` and ${rpm} rpm`}, as typed.
    </p>
  );
}
