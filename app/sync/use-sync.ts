"use client";
import { useEffect, useState, useSyncExternalStore } from "react";
import { sendingOfAll, sendingOfCase } from "../store/case-database.ts";
import { onCaseChange } from "../store/case-news.ts";
import { type KeptWords, keptWords, keptWordsOfAll } from "./kept-words.ts";
import { onSyncState, startSync, type SyncState, syncState } from "./sync.ts";

/** How things stand with the server; starts sending and fetching when it has not begun. */
export function useSync(): SyncState {
  useEffect(startSync, []);
  return useSyncExternalStore(onSyncState, syncState, syncState);
}

/** Where one case is kept; undefined until it is known. */
export function useKeptWords(caseId: string): KeptWords | undefined {
  const { standing } = useSync();
  const [sending, setSending] = useState<Awaited<ReturnType<typeof sendingOfCase>>>();
  useEffect(() => {
    let gone = false;
    const load = (): void => {
      sendingOfCase(caseId).then(
        (now) => !gone && setSending(now),
        () => undefined, // that the store cannot be read is said where the case is opened
      );
    };
    load();
    const stop = onCaseChange((changed) => changed === caseId && load());
    return () => {
      gone = true;
      stop();
    };
  }, [caseId]);
  return sending === undefined ? undefined : keptWords(standing, sending.unsent, sending.place);
}

/** Where all cases of this device are kept; undefined until it is known. */
export function useKeptWordsOfAll(): KeptWords | undefined {
  const { standing } = useSync();
  const [sending, setSending] = useState<Awaited<ReturnType<typeof sendingOfAll>>>();
  useEffect(() => {
    let gone = false;
    const load = (): void => {
      sendingOfAll().then(
        (now) => !gone && setSending(now),
        () => undefined,
      );
    };
    load();
    const stop = onCaseChange(load);
    return () => {
      gone = true;
      stop();
    };
  }, []);
  return sending === undefined ? undefined : keptWordsOfAll(standing, sending.unsent, sending.places);
}
