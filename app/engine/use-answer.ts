"use client";
import { startTransition, use, useEffect, useRef, useState } from "react";
import { ReleaseInUse } from "../knowledge/use-knowledge.ts";
import { messageOf } from "../text/message-of.ts";
import { askEngine } from "./engine-client.ts";
import type { Kind, Questions } from "./protocol.ts";

export interface Answered<T> {
  /** The newest answer; kept on the screen while a newer one is on its way. */
  readonly value: T | undefined;
  readonly busy: boolean;
  /** Why the question as it stands could not be answered; `value` is then still the one before. */
  readonly failed: string | undefined;
  /** `value` is the answer to the question as it stands. */
  readonly ok: boolean;
}

/**
 * The engine's answer to a question that changes.
 *
 * Never more than one question is under way; while it is, only the newest of the later ones is kept.
 * `key` says when the question is another one; no question is asked while it is undefined. The `key` given back is that of the
 * question answered last.
 */
export function useAnswer<K extends Kind>(
  kind: K,
  ask: Questions[K]["ask"] | undefined,
  key: string | undefined,
): Answered<Questions[K]["answer"]> & { readonly key: string | undefined } {
  type Value = Questions[K]["answer"];
  const release = use(ReleaseInUse);
  const [shown, setShown] = useState<{ key?: string; value?: Value; failed?: string }>({});
  const next = useRef<{ ask: Questions[K]["ask"]; key: string } | undefined>(undefined);
  const running = useRef(false);
  const alive = useRef(true);
  useEffect(() => {
    alive.current = true;
    return () => {
      alive.current = false;
    };
  }, []);
  useEffect(() => {
    if (key === undefined || ask === undefined) return;
    next.current = { ask, key };
    if (running.current) return;
    running.current = true;
    void (async () => {
      while (next.current !== undefined && alive.current) {
        const now = next.current;
        next.current = undefined;
        try {
          const value = await askEngine(release, kind, now.ask);
          // A transition: what is typed or tapped meanwhile comes first.
          if (alive.current) startTransition(() => setShown({ key: now.key, value }));
        } catch (error) {
          if (alive.current) setShown((old) => ({ ...old, key: now.key, failed: messageOf(error) }));
        }
      }
      running.current = false;
    })();
    // `ask` is made anew on every render; `key` stands for what it says. Another release is another screen (OpenedCase).
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [kind, key]);
  const answered = key !== undefined && shown.key === key;
  return {
    value: key === undefined ? undefined : shown.value,
    busy: key !== undefined && !answered,
    failed: answered ? shown.failed : undefined,
    ok: answered && shown.failed === undefined,
    key: shown.key,
  };
}
