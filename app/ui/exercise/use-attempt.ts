"use client";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Entry } from "../../../lib/case/entries.ts";
import { foldCase } from "../../../lib/case/fold.ts";
import { newId } from "../../store/new-entry.ts";
import { readPulled } from "../../sync/meaning.ts";
import { z } from "zod";
import { type Asked, askServer } from "./ask-attempt.ts";
import { AddedReply, WorkedReply } from "./replies.ts";

/** An attempt as the server has it; nothing of it is kept on the device. */
export interface OpenAttempt {
  readonly id: string;
  readonly exercise: WorkedReply["exercise"];
  readonly name: string;
  readonly entries: readonly Entry[];
  readonly state: CaseState;
  /** Minutes on the ramp so far. */
  readonly minutes: number;
  readonly ended: boolean;
}

export type AttemptOnScreen =
  | { readonly is: "loading" }
  | { readonly is: "failed"; readonly words: string }
  | { readonly is: "ready"; readonly attempt: OpenAttempt };

/** What a trainee does. Each is sent under an id that stays the same until it went through. */
export type Deed =
  | { readonly kind: "checks"; readonly check: string; readonly cautionsRead: boolean }
  | { readonly kind: "orders"; readonly repair: string }
  | {
      readonly kind: "verdict";
      readonly suspects: readonly string[];
      readonly confidence: number;
      readonly note?: string;
    };

export interface AttemptAtWork {
  readonly screen: AttemptOnScreen;
  readonly busy: boolean;
  /** Why the last deed did not go through, in words. */
  readonly trouble: string | undefined;
  readonly send: (deed: Deed) => Promise<boolean>;
}

const Anything = z.unknown();

const readEntries = (listed: readonly unknown[]): readonly Entry[] =>
  readPulled(listed.map((entry, index) => ({ seq: index + 1, entry }))).entries;

/** An attempt by its id, and the way to go on with it. */
export function useAttempt(id: string): AttemptAtWork {
  const [read, setRead] = useState<WorkedReply>();
  const [entries, setEntries] = useState<readonly Entry[]>([]);
  const [failed, setFailed] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const ids = useRef(new Map<string, string>());
  const path = `/api/v1/attempts/${encodeURIComponent(id)}`;

  const show = useCallback((asked: Asked<WorkedReply>): void => {
    if (asked.is === "failed") {
      setFailed(asked.words);
      return;
    }
    setRead(asked.value);
    setEntries(readEntries(asked.value.entries));
  }, []);
  useEffect(() => {
    let gone = false;
    void askServer({ method: "GET", path }, WorkedReply).then((asked) => !gone && show(asked));
    return () => {
      gone = true;
    };
  }, [path, show]);

  const send = useCallback(
    async ({ kind, ...body }: Deed): Promise<boolean> => {
      const key = JSON.stringify([kind, body]);
      const deedId = ids.current.get(key) ?? newId();
      ids.current.set(key, deedId);
      setBusy(true);
      setTrouble(undefined);
      const ask = { method: "POST", path: `${path}/${kind}`, body: { id: deedId, ...body } } as const;
      const asked = kind === "verdict" ? await askServer(ask, Anything) : await askServer(ask, AddedReply);
      setBusy(false);
      if (asked.is === "failed") {
        setTrouble(asked.words);
        if (asked.code === "attempt-over" || asked.code === "changed-meanwhile")
          show(await askServer({ method: "GET", path }, WorkedReply));
        return false;
      }
      ids.current.delete(key);
      if (kind === "verdict") {
        show(await askServer({ method: "GET", path }, WorkedReply));
        return true;
      }
      const added = AddedReply.parse(asked.value);
      const fresh = readEntries(added.entries);
      setEntries((old) => [...old, ...fresh.filter((entry) => !old.some((o) => o.id === entry.id))]);
      setRead((old) => old && { ...old, minutes: added.minutes });
      return true;
    },
    [path, show],
  );

  const state = useMemo(() => foldCase(entries), [entries]);
  const screen = useMemo((): AttemptOnScreen => {
    if (read !== undefined) {
      const { exercise, name, minutes, endedAt } = read;
      return {
        is: "ready",
        attempt: { id: read.id, exercise, name, entries, state, minutes, ended: endedAt !== null },
      };
    }
    return failed === undefined ? { is: "loading" } : { is: "failed", words: failed };
  }, [read, entries, state, failed]);
  return { screen, busy, trouble, send };
}
