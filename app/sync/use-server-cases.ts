"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { serverDoor } from "./door.ts";
import { meaningOfFailure } from "./meaning.ts";
import { readReply } from "./read-reply.ts";
import { type CaseHead, CasesReply } from "./replies.ts";
import { heardOfCases } from "./sync.ts";
import { useSync } from "./use-sync.ts";

export interface ServerCases {
  /** "off": there is no server to ask, or it does not let us in. */
  readonly status: "off" | "looking" | "ready" | "away";
  /** In the server's order. */
  readonly heads: readonly CaseHead[];
  /** Fetches the next page; undefined when there is none. */
  readonly more: (() => void) | undefined;
}

/** Cases of a page. */
const PAGE = 50;
/** Most that the server gives at once. */
const MOST = 200;
/** What is asked for is settled when it did not change for so long: somebody is typing. */
const TYPED_MS = 250;
/** A list that is looked at is asked for again so often, and sooner while the urgency of a case in it is being reckoned. */
const AGAIN_MS = 30_000;
const SOON_MS = 2500;

interface Shown {
  readonly query: string;
  readonly heads: readonly CaseHead[];
  readonly next: string | undefined;
  readonly status: "looking" | "ready" | "away";
}

const nothingOf = (query: string): Shown => ({ query, heads: [], next: undefined, status: "looking" });

/** The list as it was left: back from a case, it stands where it stood, and is then asked for again. */
let left: Shown | undefined;

/** Cases that the server has and this person may see, by the query of its list. */
export function useServerCases(query: string): ServerCases {
  const { standing } = useSync();
  const answers = standing.is === "answers";
  const [shown, setShown] = useState<Shown>(() => (left?.query === query ? left : nothingOf(query)));
  /** Counts what was asked: the answer to an older question is dropped. */
  const asked = useRef(0);
  /** Number of the last question that was answered; behind `asked` while one is under way. */
  const heard = useRef(0);
  const now = useRef(shown);
  useEffect(() => {
    now.current = shown;
    if (shown.status === "ready") left = shown;
  }, [shown]);

  const fetchPage = useCallback(
    async (after: string | undefined, limit: number) => {
      const number = ++asked.current;
      const params = new URLSearchParams(query);
      params.set("limit", String(limit));
      if (after !== undefined) params.set("after", after);
      const reply = await serverDoor.ask({ method: "GET", path: `/api/v1/cases?${params.toString()}` });
      if (number !== asked.current) return;
      heard.current = number;
      const page = readReply(reply, CasesReply);
      if (page === undefined) {
        const failed = meaningOfFailure(reply);
        setShown((old) => ({ ...old, status: failed.is === "sign-in" ? "ready" : "away" }));
        return;
      }
      const { cases, next } = page;
      heardOfCases(cases);
      setShown((old) => ({
        query,
        heads: after === undefined ? cases : [...old.heads, ...cases],
        next: next ?? undefined,
        status: "ready",
      }));
    },
    [query],
  );

  useEffect(() => {
    if (!answers) return undefined;
    const first = now.current.query === query && now.current.heads.length > 0;
    const timer = setTimeout(
      () => void fetchPage(undefined, Math.min(MOST, Math.max(PAGE, first ? now.current.heads.length : 0))),
      first || now.current.status === "looking" ? 0 : TYPED_MS,
    );
    return () => clearTimeout(timer);
  }, [answers, query, fetchPage]);

  const reckoned = shown.heads.every(({ closed, urgency }) => closed || urgency?.current !== false);
  useEffect(() => {
    if (!answers) return undefined;
    const again = (): void => {
      // Asked anew while something is under way, a slow answer would always be dropped, and so would "Show more".
      if (heard.current !== asked.current) return;
      const { heads, status } = now.current;
      // A longer list stays as it is: half of it anew would leave a gap or show a case twice.
      if (document.visibilityState === "visible" && status !== "looking" && heads.length <= MOST)
        void fetchPage(undefined, Math.max(PAGE, heads.length));
    };
    const timer = setInterval(again, reckoned ? AGAIN_MS : SOON_MS);
    document.addEventListener("visibilitychange", again);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", again);
    };
  }, [answers, fetchPage, reckoned]);

  const status = answers
    ? shown.status
    : standing.is === "away"
      ? "away"
      : standing.is === "unknown"
        ? "looking"
        : "off";
  const { next } = shown;
  return {
    status,
    heads: shown.heads,
    more: next === undefined ? undefined : () => void fetchPage(next, PAGE),
  };
}
