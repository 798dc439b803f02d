"use client";
import { useCallback, useEffect, useState } from "react";
import { type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { KeptExercise } from "./replies.ts";

export type Kept =
  | { readonly is: "looking" }
  | { readonly is: "ready"; readonly value: KeptExercise }
  | { readonly is: "failed"; readonly message: string };

/** An exercise as the server keeps it, and how to put a newer one in its place. */
export function useKeptExercise(id: string): readonly [Kept, (value: KeptExercise) => void] {
  const [kept, setKept] = useState<Kept>({ is: "looking" });
  useEffect(() => {
    let gone = false;
    void askExercise(id).then((reply) => {
      if (gone) return;
      const read = readReply(reply, KeptExercise);
      setKept(
        read === undefined ? { is: "failed", message: failureWords(reply) } : { is: "ready", value: read },
      );
    });
    return () => {
      gone = true;
    };
  }, [id]);
  const renew = useCallback((value: KeptExercise) => setKept({ is: "ready", value }), []);
  return [kept, renew];
}

/** Asks the server for one exercise. */
export function askExercise(id: string): Promise<Reply> {
  return serverDoor.ask({ method: "GET", path: `/api/v1/exercises/${encodeURIComponent(id)}` });
}
