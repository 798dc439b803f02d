"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { serverDoor } from "./door.ts";
import { meaningOfFailure } from "./meaning.ts";
import { type CaseHead, CasesReply } from "./replies.ts";
import { heardOfCases } from "./sync.ts";
import { useSync } from "./use-sync.ts";

export interface ServerCases {
  /** "off": there is no server to ask, or it does not let us in. */
  readonly status: "off" | "looking" | "ready" | "away";
  readonly heads: readonly CaseHead[];
  /** Fetches the next page; undefined when there is none. */
  readonly more: (() => void) | undefined;
}

/** Cases of a page. */
const PAGE = 50;

/** Typing is over when nothing was typed for so long. */
const TYPED_MS = 250;

/** Cases that the server has and this person may see, by words that are looked for; the last changed first. */
export function useServerCases(text: string): ServerCases {
  const { standing } = useSync();
  const answers = standing.is === "answers";
  const [shown, setShown] = useState<{
    readonly heads: readonly CaseHead[];
    readonly next: string | undefined;
    readonly status: "looking" | "ready" | "away";
  }>({ heads: [], next: undefined, status: "looking" });
  /** Counts the searches: the answer to an older one is dropped. */
  const search = useRef(0);

  const fetchPage = useCallback(
    async (after: string | undefined, number: number) => {
      const query = new URLSearchParams({ limit: String(PAGE) });
      if (text.trim() !== "") query.set("text", text.trim().slice(0, 100));
      if (after !== undefined) query.set("after", after);
      const reply = await serverDoor.ask({ method: "GET", path: `/api/v1/cases?${query.toString()}` });
      if (number !== search.current) return;
      const page =
        reply.is === "reply" && reply.status === 200 ? CasesReply.safeParse(reply.json) : undefined;
      if (page?.success !== true) {
        const failed = meaningOfFailure(reply);
        setShown((old) => ({ ...old, status: failed.is === "sign-in" ? "ready" : "away" }));
        return;
      }
      const { cases, next } = page.data;
      heardOfCases(cases);
      setShown((old) => ({
        heads: after === undefined ? cases : [...old.heads, ...cases],
        next: next ?? undefined,
        status: "ready",
      }));
    },
    [text],
  );

  useEffect(() => {
    const number = ++search.current;
    if (!answers) return undefined;
    const timer = setTimeout(() => void fetchPage(undefined, number), text === "" ? 0 : TYPED_MS);
    return () => clearTimeout(timer);
  }, [answers, text, fetchPage]);

  const { next } = shown;
  const status = answers
    ? shown.status
    : standing.is === "away"
      ? "away"
      : standing.is === "unknown"
        ? "looking"
        : "off";
  return {
    status,
    heads: shown.heads,
    more: next === undefined ? undefined : () => void fetchPage(next, search.current),
  };
}
