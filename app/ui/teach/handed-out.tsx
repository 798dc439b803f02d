"use client";
import { useState } from "react";
import { momentWords } from "../../text/moment.ts";
import type { MadeHandOut } from "./replies.ts";

/** A code and a link just made: the code to be read out, the link shown this once. */
export function HandedOut({ made }: { readonly made: MadeHandOut }) {
  const [copied, setCopied] = useState<"yes" | "no">();
  // Behind the #: what stands there is not sent to any server and so stands in no log.
  const address = `${window.location.origin}/exercise#${made.token}`;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(address);
      setCopied("yes");
    } catch {
      setCopied("no");
    }
  };
  return (
    <div className="notice">
      <p>
        Code, to be typed at <span className="code-place">{window.location.host}/exercise</span>:
      </p>
      <p className="code-large">{made.code}</p>
      <label htmlFor="hand-out-link">Or this link, shown this once</label>
      <input
        id="hand-out-link"
        readOnly
        value={address}
        autoComplete="off"
        onFocus={(event) => event.currentTarget.select()}
      />
      <p className="row">
        <button type="button" className="main" onClick={() => void copy()}>
          Copy the link
        </button>
        <span className="small">
          Both can be begun until {momentWords(made.expiresAt)}. No account is needed.
        </span>
      </p>
      <p role="status" className="small">
        {copied === "yes" && "Copied."}
        {copied === "no" && "It could not be copied by itself: hold the field above and copy it from there."}
      </p>
    </div>
  );
}
