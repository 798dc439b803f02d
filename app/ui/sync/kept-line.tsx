"use client";
import Link from "next/link";
import type { KeptWords } from "../../sync/kept-words.ts";
import { useKeptWords, useKeptWordsOfAll } from "../../sync/use-sync.ts";

const ACTS = {
  "sign-in": { href: "/sign-in", name: "Sign in" },
  "set-up": { href: "/set-up", name: "Make the first account" },
} as const;

/** Where a case is kept: here only, or here and on the server. */
export function KeptLine({ caseId }: { readonly caseId: string }) {
  return <Line words={useKeptWords(caseId)} />;
}

/** Where the cases of this device are kept. */
export function KeptLineOfAll() {
  return <Line words={useKeptWordsOfAll()} />;
}

function Line({ words }: { readonly words: KeptWords | undefined }) {
  // A line of that height from the start: what lies below must not move under a finger.
  if (words === undefined) return <p className="small soft kept-line">Looking where it is kept ...</p>;
  const act = words.act === undefined ? undefined : ACTS[words.act];
  return (
    <>
      <p className={words.trouble ? "trouble kept-line" : "small soft kept-line"} role="status">
        {words.text}
      </p>
      {act !== undefined && (
        <p className="row no-print">
          <Link className="button" href={act.href} prefetch={false}>
            {act.name}
          </Link>
        </p>
      )}
    </>
  );
}
