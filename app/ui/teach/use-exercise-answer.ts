"use client";
import { useCallback, useRef, useState } from "react";
import { askExercises } from "../../engine/exercise-client.ts";
import type { ExerciseKind, ExerciseQuestions } from "../../engine/exercise-protocol.ts";
import type { ReleaseName } from "../../knowledge/release-index.ts";
import { messageOf } from "../../text/message-of.ts";

export interface ExerciseAnswer<K extends ExerciseKind> {
  readonly busy: boolean;
  readonly failed: string | undefined;
  /** Asks; gives nothing when it failed, or when something newer was asked meanwhile. */
  readonly ask: (ask: ExerciseQuestions[K]["ask"]) => Promise<ExerciseQuestions[K]["answer"] | undefined>;
}

/** One question about exercises, asked when somebody taps; the newest counts. */
export function useExerciseAnswer<K extends ExerciseKind>(release: ReleaseName, kind: K): ExerciseAnswer<K> {
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<string>();
  const newest = useRef(0);
  const ask = useCallback(
    async (question: ExerciseQuestions[K]["ask"]) => {
      const number = ++newest.current;
      setBusy(true);
      setFailed(undefined);
      try {
        const answer = await askExercises(release, kind, question);
        return number === newest.current ? answer : undefined;
      } catch (error) {
        if (number === newest.current) setFailed(messageOf(error));
        return undefined;
      } finally {
        if (number === newest.current) setBusy(false);
      }
    },
    [release, kind],
  );
  return { busy, failed, ask };
}
