"use client";
import Link from "next/link";
import { answerOrdersRequest, type OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { useDraft } from "../../store/use-draft.ts";
import { fieldsOfDraft } from "../../text/draft-fields.ts";
import { messageOf } from "../../text/message-of.ts";
import { SheetPart } from "../sheet-part.tsx";
import { OrderMatches } from "./order-matches.tsx";
import { OrderTable } from "./order-table.tsx";
import { fieldsOfTurning, readTurning } from "./rotating-request.ts";
import { RotatingFields } from "./rotating-fields.tsx";
import { ShopFrame, type ShopProps } from "./shop-frame.tsx";

/** Tyre size and speed to the rates of everything that turns, and back from a measured shake to what it may be. */
export function RotatingScreen() {
  return <ShopFrame title="Turning parts" body={Rotating} />;
}

function Rotating({ knowledge, open, settings, onSettings }: ShopProps) {
  const [draft, setDraft, ready] = useDraft(
    open === undefined ? "rotating" : `${open.state.caseId}/rotating`,
  );
  const fields = draft === "" ? fieldsOfTurning(open?.state.turning, settings) : fieldsOfDraft(draft);
  const { problems, request, turning, needs } = readTurning(fields, settings);
  let answer: OrdersAnswer | undefined;
  let failed: string | undefined;
  try {
    answer = request && answerOrdersRequest(knowledge, { ...request, car: open?.state.car ?? {} });
  } catch (error) {
    failed = messageOf(error);
  }
  return (
    <>
      <p>
        What shakes at the rate of a wheel is on a wheel; what shakes at the rate of the propshaft or the
        engine is there. A rate names what turns, not yet what is wrong with it.
      </p>
      <p>
        <Link
          className="button"
          href={`/shop/shake${open === undefined ? "" : `?case=${encodeURIComponent(open.state.caseId)}`}`}
        >
          Measure it with a phone
        </Link>
      </p>
      <RotatingFields
        form={{ fields, problems, ready, onFields: (next) => setDraft(JSON.stringify(next)) }}
        settings={settings}
        onSettings={onSettings}
      />
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      {Object.keys(problems).length > 0 && (
        <p className="trouble" role="status">
          Mend the fields marked above; what was worked out follows.
        </p>
      )}
      {needs !== undefined && (
        <p className="notice" role="status">
          {needs}
        </p>
      )}
      {answer !== undefined && (
        <>
          {answer.measured.length > 0 && (
            <SheetPart id="matches" title="What it may be">
              <OrderMatches
                knowledge={knowledge}
                answer={answer}
                units={settings}
                turning={turning}
                open={open}
                onKept={() => setDraft("")}
              />
            </SheetPart>
          )}
          <SheetPart id="orders" title="What turns at which rate">
            <OrderTable knowledge={knowledge} answer={answer} units={settings} />
          </SheetPart>
        </>
      )}
    </>
  );
}
