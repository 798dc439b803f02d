"use client";
import Link from "next/link";
import { useCallback, useEffect, useState } from "react";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { momentWords } from "../../text/moment.ts";
import { Choice } from "../choice.tsx";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import { saveJson } from "../save-file.ts";
import { SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import { HandedOut } from "./handed-out.tsx";
import { type HandOut, HandOutList, type KeptExercise, MadeHandOut } from "./replies.ts";

/** How long a hand-out may be begun. */
export const DAYS = [
  { value: "1", name: "1 day" },
  { value: "7", name: "7 days" },
  { value: "30", name: "30 days" },
  { value: "90", name: "90 days" },
] as const;
export type Days = (typeof DAYS)[number]["value"];

/** The moment so many days from now. */
export function afterDays(days: string): string {
  return new Date(Date.now() + Number(days) * 86_400_000).toISOString();
}

/** Hands the saved exercise out by code and link, on paper, and as a file. */
export function HandOutPart({ kept, changed }: { readonly kept: KeptExercise; readonly changed: boolean }) {
  const sheet = `/teach/sheet?id=${encodeURIComponent(kept.id)}`;
  return (
    <SheetPart id="hand-out" title="Hand it out">
      {changed && <p className="notice">What is handed out is what was saved last: save first.</p>}
      <Codes id={kept.id} />
      <h3>On paper</h3>
      <p className="row">
        <Link className="button" href={sheet}>
          Worksheet
        </Link>
        <Link className="button" href={`${sheet}&answers=yes`}>
          Answer sheet
        </Link>
        <button type="button" onClick={() => saveJson(fileName(kept.name), kept.exercise)}>
          Save as a file
        </button>
      </p>
      <p className="small soft">The file and the answer sheet give away what is hidden.</p>
    </SheetPart>
  );
}

/** A name that a file can have anywhere. */
export function fileName(name: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return plain === "" ? "exercise" : plain.slice(0, 60);
}

function stillOpen(list: readonly HandOut[]): readonly HandOut[] {
  const now = new Date().toISOString();
  return list.filter((h) => h.revokedAt === null && h.expiresAt > now);
}

function Codes({ id }: { readonly id: string }) {
  const [list, setList] = useState<readonly HandOut[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const [days, setDays] = useState<Days>("7");
  const [course, setCourse] = useState("");
  const [made, setMade] = useState<MadeHandOut>();
  const { busy, failed, send } = useRequest();
  const path = `/api/v1/exercises/${encodeURIComponent(id)}/hand-outs`;
  const load = useCallback(async () => {
    const reply = await serverDoor.ask({ method: "GET", path });
    return readReply(reply, HandOutList)?.handOuts ?? failureWords(reply);
  }, [path]);
  const show = useCallback((loaded: readonly HandOut[] | string) => {
    if (typeof loaded === "string") setTrouble(loaded);
    else {
      setTrouble(undefined);
      setList(stillOpen(loaded));
    }
  }, []);
  useEffect(() => {
    let gone = false;
    void load().then((loaded) => !gone && show(loaded));
    return () => {
      gone = true;
    };
  }, [load, show]);
  const make = async () => {
    const name = course.trim();
    const body = { expiresAt: afterDays(days), ...(name !== "" && { course: name }) };
    const reply = await send({ method: "POST", path, body });
    const one = readReply(reply, MadeHandOut);
    if (one !== undefined) setMade(one);
    show(await load());
  };
  const end = async (handOut: string) => {
    await send({ method: "DELETE", path: `/api/v1/hand-outs/${encodeURIComponent(handOut)}` });
    setMade((old) => (old?.id === handOut ? undefined : old));
    show(await load());
  };
  return (
    <>
      <div className="fields">
        <Choice
          id="hand-out-days"
          label="It can be begun for"
          value={days}
          options={DAYS}
          onChange={setDays}
        />
        <TypedField
          id="hand-out-course"
          label="Course or group"
          unit="may be empty"
          text
          value={course}
          onChange={setCourse}
        />
      </div>
      <button type="button" className="wide" disabled={busy} onClick={() => void make()}>
        Make a code and a link
      </button>
      <Failed words={failed ?? trouble} />
      {made !== undefined && <HandedOut made={made} />}
      {list.length > 0 && (
        <ul className="plain-list" aria-label="Codes that can be used">
          {list.map((h) => (
            <li key={h.id} className="case-line">
              <span>
                <strong className="code">{h.code}</strong>{" "}
                <span className="small soft">
                  until {momentWords(h.expiresAt)}
                  {h.course !== null && `, ${h.course}`}
                </span>
              </span>
              <button
                type="button"
                className="plain"
                disabled={busy}
                aria-label={`End it now: the code ${h.code}`}
                onClick={() => void end(h.id)}
              >
                End it now
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
