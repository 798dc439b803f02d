"use client";
import { useSearchParams } from "next/navigation";
import { answerPlayRequest, type PlayAnswer } from "../../../lib/requests/play-request.ts";
import { useDraft } from "../../store/use-draft.ts";
import { fieldsOfDraft } from "../../text/draft-fields.ts";
import { messageOf } from "../../text/message-of.ts";
import { SheetPart } from "../sheet-part.tsx";
import { PlayFields } from "./play-fields.tsx";
import { PlayLimits } from "./play-limits.tsx";
import { readPlay } from "./play-request.ts";
import { PlayTakeOver } from "./play-take-over.tsx";
import { ShopFrame, type ShopProps } from "./shop-frame.tsx";

/** A movement in mm, inches and degrees, or what is left of tread or lining, beside the limits of the rules. */
export function PlayScreen() {
  return <ShopFrame title="Free play, run-out and wear limits" body={Play} />;
}

function Play({ knowledge, open, settings }: ShopProps) {
  const asked = useSearchParams();
  const { quantities } = knowledge.limits;
  const [draft, setDraft, ready] = useDraft(open === undefined ? "play" : `${open.state.caseId}/play`);
  // What the address asks for holds until something is picked by hand.
  const fields = {
    ...(settings.length === "inch" && { unit: "in", circleUnit: "in" }),
    ...fromAddress(asked),
    ...fieldsOfDraft(draft),
  };
  const quantity = quantities.find((q) => q.id === fields.quantity) ?? quantities[0];
  if (quantity === undefined) return <p className="notice">The knowledge holds no limits.</p>;
  const { problems, request } = readPlay(fields, quantity);
  let answer: PlayAnswer | undefined;
  let failed: string | undefined;
  try {
    answer = request && answerPlayRequest(knowledge, { ...request, car: open?.state.car ?? {} });
  } catch (error) {
    failed = messageOf(error);
  }
  return (
    <>
      <PlayFields
        knowledge={knowledge}
        quantity={quantity}
        fields={fields}
        problems={problems}
        ready={ready}
        onFields={(next) => setDraft(JSON.stringify(next))}
      />
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      {answer !== undefined && (
        <SheetPart id="limits" title="Beside the limits">
          <PlayLimits answer={answer} circle={quantity.circle} />
          {open !== undefined && (
            <PlayTakeOver knowledge={knowledge} answer={answer} request={request} open={open} />
          )}
        </SheetPart>
      )}
    </>
  );
}

function fromAddress(asked: URLSearchParams): { quantity?: string; place?: string } {
  const quantity = asked.get("quantity");
  const place = asked.get("place");
  return { ...(quantity !== null && { quantity }), ...(place !== null && { place }) };
}
