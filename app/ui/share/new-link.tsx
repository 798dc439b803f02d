"use client";
import { momentWords } from "../../text/moment.ts";
import { CopyButton } from "./copy-button.tsx";
import type { MadeLink } from "./links.ts";

/** A link just made: the one time that it can be copied. */
export function NewLink({ made }: { readonly made: MadeLink }) {
  // Behind the #: what stands there is not sent to any server and so stands in no log.
  const address = `${window.location.origin}/shared#${made.token}`;
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
        <CopyButton main label="Copy the link" text={address} />
        <span className="small">It works until {momentWords(made.expiresAt)}.</span>
      </p>
    </div>
  );
}
