"use client";
import Link from "next/link";
import { useId, useState } from "react";
import type { BeforeSeen, Booked } from "../../engine/protocol.ts";
import { useDraft } from "../../store/use-draft.ts";
import { mailAddress } from "../../text/mail-address.ts";
import type { Opened } from "../case/opened-case.tsx";
import { copyText } from "../share/copy-text.ts";
import { SheetPart } from "../sheet-part.tsx";
import { isMainKey } from "../submit-on-keys.ts";
import { messageOfCase } from "./message-of-case.ts";
import { ownMessage } from "./own-message.ts";
import { SafetyWord } from "./safety-word.tsx";

const COPY = "copy-message";

interface Props extends Opened {
  readonly told: boolean;
  readonly before: BeforeSeen | undefined;
  readonly booked: Booked | undefined;
}

/** The message to the customer, to be changed, copied, mailed or printed; and the way to the hand-over. */
export function SayPart(props: Props) {
  const { open, told } = props;
  const { caseId, advised } = open.state;
  return (
    <SheetPart
      id="say"
      title="Say"
      onKeyDown={(event) => {
        if (!isMainKey(event)) return;
        event.preventDefault();
        document.getElementById(COPY)?.click();
      }}
    >
      {told && advised === undefined && (
        <p className="notice">
          Not decided yet: this message goes by what is worked out now, and changes with every answer.
        </p>
      )}
      <MessageBox {...props} />
      <h3>Hand over</h3>
      <p>
        What was told, asked and decided, with the next checks in order, for whoever takes the car on the
        ramp.
      </p>
      <p>
        <Link className="button" href={`/case/handover?id=${encodeURIComponent(caseId)}`}>
          Open the hand-over
        </Link>
      </p>
    </SheetPart>
  );
}

function MessageBox({ knowledge, open, settings, before, booked }: Props) {
  const { state, append } = open;
  const signed = settings.by === "this device" ? "" : settings.by;
  const made = messageOfCase(knowledge, state, before, booked, signed);
  const [draft, setDraft, ready] = useDraft(`${state.caseId}/message`);
  const [news, setNews] = useState("");
  const id = useId();
  const own = ownMessage(draft);
  if (made === undefined && own.text === undefined)
    return <p className="soft">The message is written as soon as there is something to say.</p>;
  const body = own.text ?? made?.body ?? "";
  const subject = made?.subject ?? "";
  const write = (text: string) => setDraft(JSON.stringify({ of: made?.body ?? "", text }));
  const stale = own.text !== undefined && made !== undefined && own.of !== made.body;
  return (
    <div className="message-box">
      <label htmlFor={id}>Message to the customer</label>
      <p className="small soft">{subject}</p>
      <textarea
        id={id}
        className="message"
        rows={14}
        value={body}
        disabled={!ready}
        onChange={(event) => write(event.target.value)}
      />
      <SafetyWord text={body} />
      {stale && (
        <p className="notice">
          You wrote in it, and what it is made from has changed since: look whether it still holds.
        </p>
      )}
      <div className="row">
        <button
          type="button"
          id={COPY}
          className="main"
          onClick={() => void copyText(body, "mark the text above and copy it from there").then(setNews)}
        >
          Copy it <kbd>Ctrl + Enter</kbd>
        </button>
        <a className="button" href={mailAddress({ subject, body })}>
          Write a mail
        </a>
        <button type="button" onClick={() => window.print()}>
          Print it
        </button>
        <button
          type="button"
          onClick={() => {
            append({ kind: "note", text: `Told the customer:\n${body}`.slice(0, 4000) });
            setNews("Noted in the case that it was sent.");
          }}
        >
          Note that it was sent
        </button>
        {own.text !== undefined && made !== undefined && (
          <button
            type="button"
            className="plain"
            onClick={() => setDraft(JSON.stringify({ ...own, put: own.text, text: undefined }))}
          >
            Write it anew
          </button>
        )}
        {own.put !== undefined && own.text === undefined && (
          <button
            type="button"
            className="plain"
            onClick={() => setDraft(JSON.stringify({ of: own.of, text: own.put }))}
          >
            Back to my own words
          </button>
        )}
      </div>
      <p role="status" className="small">
        {news}
      </p>
      <article className="message-print" aria-hidden="true">
        <h2>{subject}</h2>
        <p>{body}</p>
      </article>
    </div>
  );
}
