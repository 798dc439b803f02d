"use client";
import { useCallback, useEffect, useState } from "react";
import type { CaseState } from "../../lib/case/case-state.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { foldCase } from "../../lib/case/fold.ts";
import { messageOf } from "../text/message-of.ts";
import { allEntries, removeCase, sendingOfAll } from "./case-database.ts";
import { caseChanged, onCaseChange } from "./case-news.ts";

export interface CaseInList {
  readonly id: string;
  readonly state: CaseState;
  readonly lastAt: string;
  /** Entries that are on this device only, though they should go to the server. */
  readonly waiting: number;
  /** Version of the case on the server; undefined while it is not there. */
  readonly serverVersion: number | undefined;
  /** The server does not take it, or has removed it. */
  readonly stuck: boolean;
}

async function casesOnDevice(): Promise<CaseInList[]> {
  const [entries, { unsent, places }] = await Promise.all([allEntries(), sendingOfAll()]);
  const byCase = new Map<string, Entry[]>();
  for (const entry of entries) {
    const list = byCase.get(entry.caseId);
    if (list === undefined) byCase.set(entry.caseId, [entry]);
    else list.push(entry);
  }
  const waiting = new Map<string, number>();
  for (const { caseId, held } of unsent)
    if (held === undefined) waiting.set(caseId, (waiting.get(caseId) ?? 0) + 1);
  const versions = new Map(places.map(({ caseId, version }) => [caseId, version]));
  const stuck = new Set(places.filter(({ trouble }) => trouble !== undefined).map(({ caseId }) => caseId));
  return [...byCase]
    .map(([id, own]) => {
      const state = foldCase(own);
      const lastAt = state.timeline.at(-1)?.entry.at ?? "";
      const version = versions.get(id) ?? 0;
      return {
        id,
        state,
        lastAt,
        waiting: waiting.get(id) ?? 0,
        serverVersion: version > 0 ? version : undefined,
        stuck: stuck.has(id),
      };
    })
    .sort((a, b) => (a.lastAt < b.lastAt ? 1 : -1));
}

/** Every case of this device, the one last worked on first. */
export function useCases() {
  const [cases, setCases] = useState<readonly CaseInList[]>();
  const [trouble, setTrouble] = useState<string>();
  const reload = useCallback(() => {
    casesOnDevice().then(setCases, (error: unknown) =>
      setTrouble(
        `This device's store could not be read (${messageOf(error)}). Private windows of some browsers keep nothing.`,
      ),
    );
  }, []);
  useEffect(() => {
    reload();
    return onCaseChange(reload);
  }, [reload]);
  const remove = useCallback((id: string) => {
    removeCase(id).then(
      () => caseChanged(id),
      (error: unknown) => setTrouble(`It was not removed: ${messageOf(error)}`),
    );
  }, []);
  return { cases, trouble, reload, remove };
}
