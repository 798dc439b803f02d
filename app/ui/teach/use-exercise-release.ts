"use client";
import { useEffect, useState } from "react";
import { releaseIndex } from "../../knowledge/release-text.ts";
import type { Loaded } from "../../knowledge/use-knowledge.ts";
import { messageOf } from "../../text/message-of.ts";

/**
 * The release that a new exercise is set with, as it names it: the newest frozen one by its version.
 *
 * Not what the records say today, which may change under its number while attempts still go by it; that one is named by its
 * sum when nothing else is there.
 */
export function useExerciseRelease(): Loaded<string> {
  const [state, setState] = useState<Loaded<string>>({ is: "loading" });
  useEffect(() => {
    let gone = false;
    releaseIndex().then(
      (index) => {
        const frozen = index.find((r) => r.frozen)?.version ?? index[0]?.sha256;
        if (gone) return;
        setState(
          frozen === undefined
            ? { is: "failed", message: "The server has no knowledge to give out." }
            : { is: "ready", value: frozen },
        );
      },
      (error: unknown) => !gone && setState({ is: "failed", message: messageOf(error) }),
    );
    return () => {
      gone = true;
    };
  }, []);
  return state;
}
