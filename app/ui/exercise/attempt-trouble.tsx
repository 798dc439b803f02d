"use client";
import Link from "next/link";
import type { MissingRelease } from "../../knowledge/use-knowledge.ts";
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

/** The knowledge that an exercise is worked with cannot be had: nothing else is taken in its place. */
export function NoKnowledge({ missing: { reason } }: { readonly missing: MissingRelease }) {
  const why = reason ?? "This server has it no longer.";
  return <AttemptTrouble words={`The knowledge of this exercise did not arrive. ${why}`} />;
}
