"use client";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { CaseState } from "../../lib/case/case-state.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { foldCase } from "../../lib/case/fold.ts";
import { listenToCase } from "../sync/case-events.ts";
import { heardOfCase, openInSync, serverIsBack, wakeSync } from "../sync/sync.ts";
import { useSync } from "../sync/use-sync.ts";
import { messageOf } from "../text/message-of.ts";
import { addEntries, entriesOfCase, sendingOfCase } from "./case-database.ts";
import { caseChanged, onCaseChange } from "./case-news.ts";
import { type EntryBody, newEntry } from "./new-entry.ts";

export interface OpenCase {
  /** "away": it is not here, and the server cannot be asked for it now. */
  readonly status: "loading" | "ready" | "missing" | "away" | "failed";
  readonly state: CaseState;
  readonly entries: readonly Entry[];
  /** Trouble with keeping entries, in words; undefined when all is kept. */
  readonly trouble: string | undefined;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}

/** One case from this browser's store; other tabs, and other devices by way of the server, are kept in step. */
export function useCase(caseId: string, by: string): OpenCase {
  const [entries, setEntries] = useState<readonly Entry[]>([]);
  const [status, setStatus] = useState<Exclude<OpenCase["status"], "away">>("loading");
  const [trouble, setTrouble] = useState<string>();
  const [onServer, setOnServer] = useState(false);
  const { standing, asked } = useSync();
  // Not here does not mean missing while the server has yet to be asked.
  const answers = standing.is === "answers";
  const coming = standing.is === "unknown" || (answers && asked.has(caseId));

  useEffect(() => {
    let gone = false;
    const load = (): void => {
      Promise.all([entriesOfCase(caseId), sendingOfCase(caseId)]).then(
        ([found, { place }]) => {
          if (gone) return;
          setOnServer(place !== undefined && place.version > 0 && place.trouble === undefined);
          setEntries((shown) => [...found, ...shown.filter((e) => !found.some((f) => f.id === e.id))]);
          setStatus((now) =>
            found.length > 0 ? "ready" : now === "ready" ? now : coming ? "loading" : "missing",
          );
        },
        (error: unknown) => {
          if (gone) return;
          setStatus("failed");
          setTrouble(messageOf(error));
        },
      );
    };
    load();
    const stop = onCaseChange((changed) => changed === caseId && load());
    return () => {
      gone = true;
      stop();
    };
  }, [caseId, coming]);

  useEffect(() => (caseId === "" ? undefined : openInSync(caseId)), [caseId]);
  useEffect(() => {
    if (!answers || !onServer) return undefined;
    return listenToCase(caseId, (version) => heardOfCase(caseId, version), serverIsBack);
  }, [caseId, answers, onServer]);

  const append = useCallback(
    (...bodies: readonly EntryBody[]) => {
      const made = bodies.map((body) => newEntry(caseId, body, by));
      setEntries((old) => [...old, ...made]);
      addEntries(made).then(
        () => {
          setTrouble(undefined);
          caseChanged(caseId);
          wakeSync();
        },
        (error: unknown) =>
          setTrouble(
            `The last entry is on the screen but could not be saved on this device (${messageOf(error)}). Write it down or free some space before you close the page.`,
          ),
      );
    },
    [caseId, by],
  );

  const state = useMemo(() => foldCase(entries), [entries]);
  const seen = status === "missing" && standing.is === "away" ? "away" : status;
  return { status: seen, state, entries, trouble, append };
}
