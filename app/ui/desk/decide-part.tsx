"use client";
import type { KeyboardEvent } from "react";
import { useRef } from "react";
import type { BeforeSeen } from "../../engine/protocol.ts";
import type { Answered } from "../../engine/use-answer.ts";
import { momentWords } from "../../text/moment.ts";
import { ChangeRelease } from "../case/change-release.tsx";
import type { Opened } from "../case/opened-case.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { isMainKey } from "../submit-on-keys.ts";
import { AdviseForm } from "./advise-form.tsx";
import { BookingView } from "./booking-view.tsx";
import { DriveView } from "./drive-view.tsx";
import { PartsView } from "./parts-view.tsx";
import type { BookingOnDesk } from "./use-booking.ts";
import { usePartsPicked } from "./use-parts-picked.ts";

interface Props extends Opened {
  readonly told: boolean;
  readonly before: Answered<BeforeSeen>;
  readonly booked: BookingOnDesk;
  readonly onRecorded: () => void;
}

/** Whether to drive, how long to book and what to have ready: worked out, then decided by a person. */
export function DecidePart(props: Props) {
  const { knowledge, release, open, told, before } = props;
  const form = useRef<HTMLFormElement>(null);
  const { newest } = release;
  const onKeyDown = (event: KeyboardEvent) => {
    if (!isMainKey(event)) return;
    event.preventDefault();
    form.current?.requestSubmit();
  };
  return (
    <SheetPart id="decide" title="Decide" busy={told && before.busy} onKeyDown={onKeyDown}>
      {knowledge.advice === undefined ? (
        <div className="notice">
          <p>
            Knowledge {knowledge.version}, which this case is weighed with, says nothing of driving before a
            car was seen.
          </p>
          {newest !== undefined && <ChangeRelease newest={newest} append={open.append} />}
        </div>
      ) : told ? (
        <>
          <Recorded {...props} />
          {before.failed !== undefined && (
            <p className="trouble" role="alert">
              It could not be worked out: {before.failed}
            </p>
          )}
          {before.value === undefined && before.failed === undefined && (
            <p role="status">Working it out ...</p>
          )}
          {before.value !== undefined && <Reckoned {...props} value={before.value} form={form} />}
        </>
      ) : (
        <p className="notice">Nothing was told yet. Take in what the customer says, or ask.</p>
      )}
    </SheetPart>
  );
}

function Reckoned({
  value,
  form,
  ...props
}: Props & { readonly value: BeforeSeen; readonly form: React.RefObject<HTMLFormElement | null> }) {
  const { knowledge, open, booked } = props;
  const parts = usePartsPicked(open.state.caseId, value.parts);
  return (
    <>
      <DriveView knowledge={knowledge} drive={value.drive} />
      <h3>Time to book</h3>
      <BookingView booked={booked} />
      <h3>Parts to have ready</h3>
      <PartsView knowledge={knowledge} parts={value.parts} picked={parts.picked} onPicked={parts.pick} />
      <AdviseForm
        // Another level is another decision.
        key={value.drive.level}
        ref={form}
        knowledge={knowledge}
        state={open.state}
        drive={value.drive}
        // After a failure, too, what is shown was worked out from other answers.
        busy={!props.before.ok}
        booked={booked.value}
        parts={parts.picked}
        append={open.append}
        onRecorded={() => {
          parts.pick(undefined);
          props.onRecorded();
        }}
      />
    </>
  );
}

/** Whether one level of advice is graver than another: the gravest stands first. */
export function isGraver({ advice }: Opened["knowledge"], one: string, other: string): boolean {
  const place = (id: string): number => advice?.levels.findIndex((level) => level.id === id) ?? -1;
  return place(one) < place(other);
}

/** The decision that stands, and whether it still agrees with what is worked out. */
function Recorded({ knowledge, open, before }: Props) {
  const { advised } = open.state;
  if (advised === undefined) return null;
  const levels = knowledge.advice?.levels ?? [];
  const now = before.value?.drive;
  const graver = now !== undefined && isGraver(knowledge, now.level, advised.level);
  return (
    <div className={graver ? "trouble" : "notice"} role={graver ? "alert" : undefined}>
      <p>
        <strong>Decided: {levels.find((level) => level.id === advised.level)?.name ?? advised.level}.</strong>{" "}
        <span className="small number">
          {momentWords(advised.at)}, signed {advised.by}
        </span>
      </p>
      {graver && (
        <p>What is known now speaks for more: {now.name}. Decide again, and tell the customer at once.</p>
      )}
    </div>
  );
}
