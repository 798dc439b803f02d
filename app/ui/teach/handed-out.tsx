"use client";
import { useState } from "react";
import { momentWords } from "../../text/moment.ts";
import { copyText, FROM_THE_FIELD } from "../share/copy-text.ts";
import { addressOf, LinkField } from "../share/link-once.tsx";
import type { MadeHandOut } from "./replies.ts";

/** A code and a link just made: the code to be read out, the link shown this once. */
export function HandedOut({ made }: { readonly made: MadeHandOut }) {
  const [news, setNews] = useState("");
  const address = addressOf("/exercise", made.token);
  return (
    <div className="notice">
      <p>
        Code, to be typed at <span className="code-place">{window.location.host}/exercise</span>:
      </p>
      <p className="code-large">{made.code}</p>
      <LinkField id="hand-out-link" label="Or this link, shown this once" address={address} />
      <p className="row">
        <button
          type="button"
          className="main"
          onClick={() => void copyText(address, FROM_THE_FIELD).then(setNews)}
        >
          Copy the link
        </button>
        <span className="small">
          Both can be begun until {momentWords(made.expiresAt)}. No account is needed.
        </span>
      </p>
      <p role="status" className="small">
        {news}
      </p>
    </div>
  );
}
