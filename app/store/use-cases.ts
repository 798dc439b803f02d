"use client";
import { useCallback, useEffect, useState } from "react";
import type { CaseState } from "../../lib/case/case-state.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { foldCase } from "../../lib/case/fold.ts";
import { messageOf } from "../text/message-of.ts";
import { allEntries, removeCase } from "./case-database.ts";

export interface CaseInList {
  readonly id: string;
  readonly state: CaseState;
  readonly lastAt: string;
}

async function casesInBrowser(): Promise<CaseInList[]> {
  const byCase = new Map<string, Entry[]>();
  for (const entry of await allEntries()) {
    byCase.set(entry.caseId, [...(byCase.get(entry.caseId) ?? []), entry]);
  }
  return [...byCase]
    .map(([id, entries]) => {
      const state = foldCase(entries);
      return { id, state, lastAt: state.timeline.at(-1)?.entry.at ?? "" };
    })
    .sort((a, b) => (a.lastAt < b.lastAt ? 1 : -1));
}

/** Every case of this browser, the one last worked on first. */
export function useCases() {
  const [cases, setCases] = useState<readonly CaseInList[]>();
  const [trouble, setTrouble] = useState<string>();
  const reload = useCallback(() => {
    casesInBrowser().then(setCases, (error: unknown) =>
      setTrouble(
        `This browser's store could not be read (${messageOf(error)}). Private windows of some browsers keep nothing.`,
      ),
    );
  }, []);
  useEffect(reload, [reload]);
  const remove = useCallback(
    (id: string) => {
      removeCase(id).then(reload, (error: unknown) => setTrouble(`It was not removed: ${messageOf(error)}`));
    },
    [reload],
  );
  return { cases, trouble, reload, remove };
}
