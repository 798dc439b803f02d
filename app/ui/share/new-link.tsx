"use client";
import { useState } from "react";
import { momentWords } from "../../text/moment.ts";
import type { MadeLink } from "./links.ts";

/** A link just made: the one time that it can be copied. */
export function NewLink({ made }: { readonly made: MadeLink }) {
  const [copied, setCopied] = useState<"yes" | "no">();
  // Behind the #: what stands there is not sent to any server and so stands in no log.
  const address = `${window.location.origin}/shared#${made.token}`;
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
      <label htmlFor="new-link">The new link, shown this once</label>
      <input
        id="new-link"
        readOnly
        value={address}
        autoComplete="off"
        onFocus={(event) => event.currentTarget.select()}
      />
      <p className="row">
        <button type="button" className="main" onClick={() => void copy()}>
          Copy the link
        </button>
        <span className="small">It works until {momentWords(made.expiresAt)}.</span>
      </p>
      <p role="status" className="small">
        {copied === "yes" && "Copied."}
        {copied === "no" && "It could not be copied by itself: hold the field above and copy it from there."}
      </p>
    </div>
  );
}
