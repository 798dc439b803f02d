"use client";
import type { Ranked } from "../../engine/protocol.ts";
import { percent } from "../../text/chance-words.ts";

/** Tells a screen reader the new ranking whenever it changes. */
export function RankingNews({ ranked }: { readonly ranked: Ranked }) {
  const news =
    ranked.target === "none"
      ? ""
      : `New ranking. ${ranked.rows
          .slice(0, 3)
          .map((l, i) => `${i + 1}: ${l.name}, ${percent(l.explains)}`)
          .join(". ")}. Not in this knowledge: ${percent(ranked.notInKnowledge)}.`;
  return (
    <p className="hidden" role="status" aria-live="polite" data-testid="ranking-news">
      {news}
    </p>
  );
}
