"use client";
import { useEffect, useState } from "react";
import { readSetting, writeSetting } from "../store/case-database.ts";
import { serverDoor } from "./door.ts";
import { type Colleague, PeopleReply } from "./replies.ts";
import { useSync } from "./use-sync.ts";

const KEY = "people";

/** Who a case can be given to: asked of the server, and as last heard while it does not answer. Empty without accounts. */
export function usePeople(): readonly Colleague[] {
  const { standing, me } = useSync();
  const mayAsk = standing.is === "answers" && me?.person !== undefined && me.person.role !== "trainee";
  const [people, setPeople] = useState<readonly Colleague[]>([]);
  useEffect(() => {
    let gone = false;
    const take = (json: unknown): boolean => {
      const read = PeopleReply.safeParse(json);
      if (read.success && !gone) setPeople(read.data.people);
      return read.success;
    };
    const last = async (): Promise<void> => {
      const text = await readSetting(KEY);
      if (text !== undefined) take(JSON.parse(text));
    };
    const ask = async (): Promise<void> => {
      const reply = await serverDoor.ask({ method: "GET", path: "/api/v1/people" });
      if (reply.is === "reply" && reply.status === 200 && take(reply.json))
        await writeSetting(KEY, JSON.stringify(reply.json));
    };
    // Without the names a case can still be taken by oneself or given up.
    (mayAsk ? ask() : last()).catch(() => undefined);
    return () => {
      gone = true;
    };
  }, [mayAsk]);
  return people;
}
