"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import type { View } from "./view.ts";
import { type Ask, type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";

export type FormStanding =
  | { readonly is: "looking" }
  | { readonly is: "shut"; readonly title: string; readonly text: string }
  | { readonly is: "open"; readonly view: View };

export interface Form {
  readonly standing: FormStanding;
  /** Something is under way. */
  readonly sending: boolean;
  /** Why the last thing did not go through. */
  readonly trouble: string | undefined;
  /** Sends something; gives the form as it stands then, undefined when it did not go through. */
  readonly send: (ask: Omit<Ask, "bearer">) => Promise<View | undefined>;
  /** Sends once more what did not get through; undefined when there is nothing of the kind. */
  readonly again: (() => Promise<View | undefined>) | undefined;
  /** Begins of keys under which this device keeps what is typed. */
  readonly key: string;
}

const READ = { method: "GET", path: "/api/v1/form" } as const;

const NOT_WHOLE = {
  is: "shut",
  title: "The link is not whole",
  text: "Its end is missing or was changed on the way. Open it again from the message that you got, or ask the workshop to send it once more.",
} as const;
const OVER = {
  is: "shut",
  title: "This link has run out",
  text: "Its time is over, or the workshop has ended it. What you answered has arrived and is kept. Please call the workshop if there is more to say.",
} as const;
const LOST = "It did not get through: there is no connection just now. Nothing that you entered is lost.";

/** The form behind the address: its token stands behind the #, and goes out in a header. */
export function useForm(): Form {
  const [token, setToken] = useState<string>();
  const [standing, setStanding] = useState<FormStanding>({ is: "looking" });
  const [sending, setSending] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const [failed, setFailed] = useState<Omit<Ask, "bearer">>();
  const busy = useRef(false);

  const take = useCallback((reply: Reply, ask: Omit<Ask, "bearer">): View | undefined => {
    const view = viewOf(reply);
    setFailed(reply.is === "lost" ? ask : undefined);
    if (view !== undefined) setStanding({ is: "open", view });
    else if (isOver(reply)) setStanding(OVER);
    else setTrouble(reply.is === "lost" ? LOST : failureWords(reply));
    return view;
  }, []);
  const send = useCallback(
    async (ask: Omit<Ask, "bearer">): Promise<View | undefined> => {
      // A second tap while the first is on its way.
      if (busy.current || token === undefined) return undefined;
      busy.current = true;
      setSending(true);
      setTrouble(undefined);
      const reply = await settled(token, ask);
      busy.current = false;
      setSending(false);
      return take(reply, ask);
    },
    [token, take],
  );

  useEffect(() => {
    const look = (): void => {
      const found = window.location.hash.slice(1);
      const whole = /^[A-Za-z0-9_-]{20,100}$/.test(found);
      setToken(whole ? found : undefined);
      setStanding(whole ? { is: "looking" } : NOT_WHOLE);
    };
    look();
    window.addEventListener("hashchange", look);
    return () => window.removeEventListener("hashchange", look);
  }, []);
  useEffect(() => {
    let gone = false;
    if (token !== undefined) void settled(token, READ).then((reply) => !gone && take(reply, READ));
    return () => {
      gone = true;
    };
  }, [token, take]);
  useEffect(() => {
    if (failed === undefined) return undefined;
    const retry = (): void => void send(failed);
    window.addEventListener("online", retry);
    return () => window.removeEventListener("online", retry);
  }, [failed, send]);

  return {
    standing,
    sending,
    trouble,
    send,
    again: failed === undefined ? undefined : () => send(failed),
    key: `form/${token?.slice(0, 8) ?? ""}`,
  };
}

const isOver = (reply: Reply): boolean =>
  reply.is === "reply" && (reply.status === 401 || reply.status === 410 || reply.status === 404);

/** The reply; where the form has moved on meanwhile, the form as it is now. */
async function settled(token: string, ask: Omit<Ask, "bearer">): Promise<Reply> {
  const reply = await serverDoor.ask({ ...ask, bearer: token });
  const movedOn =
    reply.is === "reply" && ["question-over", "not-the-last"].includes(reply.problem?.code ?? "");
  return movedOn ? serverDoor.ask({ ...READ, bearer: token }) : reply;
}

/** What our own server gives follows its description; anything else in its place has no `said`. */
function viewOf(reply: Reply): View | undefined {
  if (reply.is === "lost" || reply.status !== 200) return undefined;
  const { json } = reply;
  const isForm = json !== null && typeof json === "object" && "said" in json && Array.isArray(json.said);
  return isForm ? (json as View) : undefined;
}
