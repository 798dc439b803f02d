"use client";
import Link from "next/link";
import { TitledSheet } from "../titled-sheet.tsx";

/** What stands in place of an attempt that cannot be shown, in words. */
export function AttemptTrouble({ words }: { readonly words: string }) {
  return (
    <TitledSheet title="The attempt cannot be shown">
      <p>{words}</p>
      <p className="row">
        <button type="button" className="main" onClick={() => window.location.reload()}>
          Try again
        </button>
        <Link className="button" href="/exercise">
          My attempts
        </Link>
      </p>
    </TitledSheet>
  );
}
