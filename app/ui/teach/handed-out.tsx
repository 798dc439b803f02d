"use client";
import { momentWords } from "../../text/moment.ts";
import { CopyButton } from "../share/copy-button.tsx";
import { addressOf, LinkField } from "../share/link-once.tsx";
import type { MadeHandOut } from "./replies.ts";

/** A code and a link just made: the code to be read out, the link shown this once. */
export function HandedOut({ made }: { readonly made: MadeHandOut }) {
  const address = addressOf("/exercise", made.token);
  return (
    <div className="notice">
      <p>
        Code, to be typed at <span className="code-place">{window.location.host}/exercise</span>:
      </p>
      <p className="code-large">{made.code}</p>
      <LinkField id="hand-out-link" label="Or this link, shown this once" address={address} />
      <p className="row">
        <CopyButton main label="Copy the link" text={address} />
        <span className="small">
          Both can be begun until {momentWords(made.expiresAt)}. No account is needed.
        </span>
      </p>
    </div>
  );
}
