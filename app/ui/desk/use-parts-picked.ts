"use client";
import type { PartReady } from "../../../lib/engine/index.ts";
import { useKept } from "../../store/use-kept.ts";

/** `part@place` of a part to have ready. */
export function partId({ part, place }: PartReady): string {
  return place === "" ? part : `${part}@${place}`;
}

/** The parts ticked to be ordered: those that pay, until somebody ticks otherwise. */
export function usePartsPicked(caseId: string, parts: readonly PartReady[]) {
  const [ticked, pick] = useKept<readonly string[] | undefined>(`${caseId}/parts-ready`, undefined);
  const ids = parts.map(partId);
  const picked = ticked?.filter((id) => ids.includes(id)) ?? parts.filter((p) => p.order).map(partId);
  return { picked, pick };
}
