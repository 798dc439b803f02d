"use client";
import { useCallback, useState } from "react";
import { type Ask, type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords, fieldProblems } from "../../sync/failure-words.ts";

export interface Request {
  readonly busy: boolean;
  /** Why the last one did not go through, in words. */
  readonly failed: string | undefined;
  /** What is wrong with each field, by its name. */
  readonly fields: Readonly<Record<string, string>>;
  /** Asks; gives the reply when it went through, undefined otherwise. */
  readonly send: (ask: Ask) => Promise<Extract<Reply, { is: "reply" }> | undefined>;
  /** Says what is wrong before anything is asked. */
  readonly refuse: (fields: Readonly<Record<string, string>>) => void;
}

/** One request at a time to the server, and what became of it. */
export function useRequest(): Request {
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<string>();
  const [fields, setFields] = useState<Readonly<Record<string, string>>>({});
  const send = useCallback(async (ask: Ask) => {
    setBusy(true);
    setFailed(undefined);
    setFields({});
    const reply = await serverDoor.ask(ask);
    setBusy(false);
    if (reply.is === "reply" && reply.status < 300 && reply.json !== undefined) return reply;
    const wrong = fieldProblems(reply);
    setFields(wrong);
    setFailed(
      Object.keys(wrong).length > 0
        ? "Some of it cannot be taken; see beside the fields."
        : failureWords(reply),
    );
    return undefined;
  }, []);
  const refuse = useCallback((wrong: Readonly<Record<string, string>>) => {
    setFields(wrong);
    setFailed(undefined);
  }, []);
  return { busy, failed, fields, send, refuse };
}
