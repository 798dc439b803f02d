"use client";
import { useCallback, useEffect, useState } from "react";
import { askServer } from "../exercise/ask-attempt.ts";
import { askedQuery, type Filter } from "./filter.ts";
import { AttemptsReply, BoardReply } from "./replies.ts";

/** Attempts that a page of the list holds. */
const PAGE = 50;

const attemptsPath = (filter: Filter, after?: string): string =>
  `/api/v1/attempts${askedQuery(filter, { limit: String(PAGE), ...(after !== undefined && { after }) })}`;

interface Loaded {
  readonly of: string;
  readonly board?: BoardReply;
  readonly list?: AttemptsReply;
  readonly failed?: string;
}

export interface Board extends Omit<Loaded, "of"> {
  /** What is shown is of another filter, or nothing yet. */
  readonly busy: boolean;
  readonly showMore: () => Promise<void>;
}

/** The board and its attempts; what was there stays until the next has come. */
export function useBoard(filter: Filter): Board {
  const [loaded, setLoaded] = useState<Loaded>({ of: "" });
  const key = JSON.stringify(filter);
  useEffect(() => {
    let gone = false;
    const wanted = JSON.parse(key) as Filter;
    void Promise.all([
      askServer({ method: "GET", path: `/api/v1/attempts/board${askedQuery(wanted)}` }, BoardReply),
      askServer({ method: "GET", path: attemptsPath(wanted) }, AttemptsReply),
    ]).then(([board, list]) => {
      if (gone) return;
      if (board.is === "ok" && list.is === "ok") setLoaded({ of: key, board: board.value, list: list.value });
      else setLoaded({ of: key, failed: board.is === "failed" ? board.words : wordsOf(list) });
    });
    return () => {
      gone = true;
    };
  }, [key]);
  const { list } = loaded;
  const showMore = useCallback(async () => {
    const after = list?.next;
    if (after === undefined || after === null) return;
    const page = await askServer(
      { method: "GET", path: attemptsPath(JSON.parse(key) as Filter, after) },
      AttemptsReply,
    );
    setLoaded((now) => {
      if (now.list !== list || list === undefined) return now;
      if (page.is === "failed") return { ...now, failed: page.words };
      const { attempts, next } = page.value;
      return { ...now, list: { attempts: [...list.attempts, ...attempts], next } };
    });
  }, [key, list]);
  return { ...loaded, busy: loaded.of !== key, showMore };
}

const wordsOf = (asked: { readonly is: "ok" } | { readonly is: "failed"; readonly words: string }): string =>
  asked.is === "failed" ? asked.words : "";
