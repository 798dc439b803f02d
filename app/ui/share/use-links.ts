"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { meaningOfFailure } from "../../sync/meaning.ts";
import { readReply } from "../../sync/read-reply.ts";
import { useSync } from "../../sync/use-sync.ts";
import { useRequest } from "../people/use-request.ts";
import { type CaseLink, LinksReply, MadeLink } from "./links.ts";

/** Kinds of link: to read a case, or to its customer's form. */
export type LinkKind = "read" | "customer";

export interface Links {
  /** Those of the kind that still work, the newest first. */
  readonly links: readonly CaseLink[];
  /** Why there are none to be had. */
  readonly trouble: string | undefined;
  readonly busy: boolean;
  readonly failed: string | undefined;
  /** The link just made: its token is given this once. */
  readonly made: MadeLink | undefined;
  readonly make: (body: { readonly days: number; readonly words?: string }) => Promise<void>;
  readonly revoke: (id: string) => Promise<void>;
}

/** Whether links to cases can be made here and now. */
export function useMayShare(): boolean {
  const { standing, me } = useSync();
  const may = me?.local === true || (me?.person !== undefined && me.person.role !== "trainee");
  return standing.is === "answers" && may;
}

function stillWorking(links: readonly CaseLink[], kind: LinkKind): readonly CaseLink[] {
  const now = new Date().toISOString();
  return links.filter((link) => link.kind === kind && link.revokedAt === undefined && link.expiresAt > now);
}

/** Whether the same may go well a little later, so that it says nothing of the links themselves. */
const passes = (reply: Reply): boolean => ["lost", "busy", "stumbled"].includes(meaningOfFailure(reply).is);

/** The links of one kind to a case; read anew every `everyMs` while somebody looks, where that is given. */
export function useLinks(caseId: string, kind: LinkKind, everyMs?: number): Links {
  const [links, setLinks] = useState<readonly CaseLink[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const [made, setMade] = useState<MadeLink>();
  /** There is something on the screen; a link just made is shown this once, so a failed look must not hide it. */
  const shown = useRef(false);
  const { busy, failed, send } = useRequest();
  const path = `/api/v1/cases/${encodeURIComponent(caseId)}/links`;

  const ask = useCallback(() => serverDoor.ask({ method: "GET", path }), [path]);
  const show = useCallback(
    (reply: Reply) => {
      const list = readReply(reply, LinksReply);
      if (list !== undefined) {
        shown.current = true;
        setTrouble(undefined);
        setLinks(stillWorking(list.links, kind));
      } else if (shown.current && passes(reply)) return;
      else if (reply.is === "reply" && reply.status === 404)
        setTrouble("This case is not on the server yet; it can be shared once it is.");
      else setTrouble(failureWords(reply));
    },
    [kind],
  );
  useEffect(() => {
    let gone = false;
    const look = (): void => void ask().then((reply) => !gone && show(reply));
    look();
    const timer =
      everyMs === undefined
        ? undefined
        : setInterval(() => document.visibilityState === "visible" && look(), everyMs);
    return () => {
      gone = true;
      clearInterval(timer);
    };
  }, [ask, show, everyMs]);

  const make = async (body: { readonly days: number; readonly words?: string }) => {
    const reply = await send({ method: "POST", path, body: { kind, ...body } });
    const link = readReply(reply, MadeLink);
    if (link !== undefined) {
      shown.current = true;
      setMade(link);
    }
    show(await ask());
  };
  const revoke = async (id: string) => {
    await send({ method: "DELETE", path: `/api/v1/links/${encodeURIComponent(id)}` });
    setMade((old) => (old?.id === id ? undefined : old));
    show(await ask());
  };
  return { links, trouble, busy, failed, made, make, revoke };
}
