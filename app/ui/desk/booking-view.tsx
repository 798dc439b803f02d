import { hoursWords } from "../../text/amounts.ts";
import { chanceWords } from "../../text/chance-words.ts";
import { Fact } from "../fact.tsx";
import { ALL_VISITS, type BookingOnDesk } from "./use-booking.ts";
import { VisitsDrawing } from "./visits-drawing.tsx";

/** How long such a visit takes, what it needs, and from how many visits that is known. */
export function BookingView({ booked }: { readonly booked: BookingOnDesk }) {
  const { value, failed } = booked;
  if (failed !== undefined)
    return <p className="trouble">The time could not be worked out: {failed} The rest holds.</p>;
  if (value === undefined) return <p role="status">Playing the first visits ...</p>;
  const { booking, whole } = value;
  const { visits, raised, helper, roadTest, handedOver } = booking;
  const share = (p: number): string => {
    if (p === 0) return `in none of ${visits} visits`;
    if (p === 1) return `in all ${visits} visits`;
    return p > 0.98 ? "in nearly all visits" : `in ${chanceWords(p)} visits`;
  };
  return (
    <>
      <p>
        Half of such visits take <strong className="number">{hoursWords(booking.whole.p50)}</strong> or less,
        nine of ten <strong className="number">{hoursWords(booking.whole.p90)}</strong>: checks, repair and
        seeing whether it is gone.
      </p>
      <VisitsDrawing minutes={whole} p50={booking.whole.p50} p90={booking.whole.p90} />
      <dl className="desk-facts">
        <Fact name="Lift or stands">{share(raised)}</Fact>
        <Fact name="Second person">{share(helper)}</Fact>
        <Fact name="Road test">{share(roadTest)}</Fact>
        <Fact name="Ends without a cure">{share(handedOver)}</Fact>
      </dl>
      <p className="small soft number">
        From {visits} of {ALL_VISITS} visits, played ahead from what is told so far
        {visits < ALL_VISITS ? "; more are being played." : "."} Waiting for a part is not counted.
      </p>
    </>
  );
}
