"use client";
import { addressOf, LinkOnce } from "./link-once.tsx";
import type { MadeLink } from "./links.ts";

/** A link for reading just made: the one time that it can be copied. */
export function NewLink({ made }: { readonly made: MadeLink }) {
  return (
    <div className="notice">
      <LinkOnce
        id="new-link"
        label="The new link, shown this once"
        address={addressOf("/shared", made.token)}
        expiresAt={made.expiresAt}
      />
    </div>
  );
}
