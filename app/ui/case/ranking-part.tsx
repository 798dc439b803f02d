"use client";
import type { ReactNode } from "react";
import type { CaseCar } from "../../../lib/case/entries.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { Underside } from "../drawing/underside.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { Ranking } from "./ranking.tsx";
import type { useRanking } from "./use-ranking.ts";

/** What it may be: the ranking and, below it, the car from underneath. */
export function RankingPart({
  knowledge,
  car,
  ranking,
  mend,
  instead,
  suspect,
  onSuspect,
  onDrawn = onSuspect,
  children,
}: {
  readonly knowledge: Knowledge;
  readonly car: CaseCar;
  readonly ranking: ReturnType<typeof useRanking>;
  /** How to go on when it could not be worked out. */
  readonly mend?: string;
  /** What is said in place of the ranking. */
  readonly instead?: ReactNode;
  /** The one that is open. */
  readonly suspect: string | undefined;
  readonly onSuspect: (suspect: string | undefined) => void;
  /** One was tapped in the drawing. */
  readonly onDrawn?: (suspect: string) => void;
  /** Between the two. */
  readonly children?: ReactNode;
}) {
  const { situation, ranked, failed, busy } = ranking;
  return (
    <SheetPart id="ranking" title="What it may be" busy={busy}>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          The ranking could not be worked out: {failed}
          {mend !== undefined && ` ${mend}`}
        </p>
      )}
      {instead}
      {instead === undefined && ranked === undefined && failed === undefined && (
        <p role="status">Working it out ...</p>
      )}
      {instead === undefined && ranked !== undefined && (
        <>
          <Ranking
            knowledge={knowledge}
            ranked={ranked}
            situation={situation}
            open={suspect}
            onOpen={onSuspect}
          />
          {children}
          <Underside knowledge={knowledge} car={car} rows={ranked.rows} open={suspect} onOpen={onDrawn} />
        </>
      )}
    </SheetPart>
  );
}
