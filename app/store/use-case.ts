"use client";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { CaseState } from "../../lib/case/case-state.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { foldCase } from "../../lib/case/fold.ts";
import { messageOf } from "../text/message-of.ts";
import { addEntries, entriesOfCase } from "./case-database.ts";
import { type EntryBody, newEntry } from "./new-entry.ts";

export interface OpenCase {
  readonly status: "loading" | "ready" | "missing" | "failed";
  readonly state: CaseState;
  readonly entries: readonly Entry[];
  /** Trouble with keeping entries, in words; undefined when all is kept. */
  readonly trouble: string | undefined;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}

const changed =
  typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("cornerwise-cases");

/** One case from this browser's store; other tabs on the same case are kept in step. */
export function useCase(caseId: string, by: string): OpenCase {
  const [entries, setEntries] = useState<readonly Entry[]>([]);
  const [status, setStatus] = useState<OpenCase["status"]>("loading");
  const [trouble, setTrouble] = useState<string>();

  useEffect(() => {
    let gone = false;
    const load = (): void => {
      entriesOfCase(caseId).then(
        (found) => {
          if (gone) return;
          setEntries((shown) => [...found, ...shown.filter((e) => !found.some((f) => f.id === e.id))]);
          setStatus((now) => (found.length > 0 ? "ready" : now === "ready" ? now : "missing"));
        },
        (error: unknown) => {
          if (gone) return;
          setStatus("failed");
          setTrouble(messageOf(error));
        },
      );
    };
    load();
    const hear = (event: MessageEvent<unknown>): void => {
      if (event.data === caseId) load();
    };
    changed?.addEventListener("message", hear);
    return () => {
      gone = true;
      changed?.removeEventListener("message", hear);
    };
  }, [caseId]);

  const append = useCallback(
    (...bodies: readonly EntryBody[]) => {
      const made = bodies.map((body) => newEntry(caseId, body, by));
      setEntries((old) => [...old, ...made]);
      addEntries(made).then(
        () => {
          setTrouble(undefined);
          changed?.postMessage(caseId);
        },
        (error: unknown) =>
          setTrouble(
            `The last entry is on the screen but could not be saved in this browser (${messageOf(error)}). Write it down or free some space before you close the page.`,
          ),
      );
    },
    [caseId, by],
  );

  const state = useMemo(() => foldCase(entries), [entries]);
  return { status, state, entries, trouble, append };
}
