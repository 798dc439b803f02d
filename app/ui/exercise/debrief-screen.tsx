"use client";
import { useSearchParams } from "next/navigation";
import { useEffect, useState } from "react";
import { useReleaseOfCase } from "../../knowledge/use-knowledge.ts";
import { TitledSheet } from "../titled-sheet.tsx";
import { type Asked, askServer } from "./ask-attempt.ts";
import { AttemptTrouble, NoKnowledge } from "./attempt-trouble.tsx";
import { DebriefSheet } from "./debrief-sheet.tsx";
import { DebriefReply } from "./replies.ts";

/** The debrief of the attempt that the address names as `id`: for the trainee once it has ended, for who teaches at any time. */
export function DebriefScreen() {
  const id = useSearchParams().get("id") ?? "";
  return <Debriefed key={id} id={id} />;
}

function Debriefed({ id }: { readonly id: string }) {
  const [asked, setAsked] = useState<Asked<DebriefReply>>();
  useEffect(() => {
    let gone = false;
    const path = `/api/v1/attempts/${encodeURIComponent(id)}/debrief`;
    void askServer({ method: "GET", path }, DebriefReply).then((found) => !gone && setAsked(found));
    return () => {
      gone = true;
    };
  }, [id]);
  const reply = asked?.is === "ok" ? asked.value : undefined;
  const release = useReleaseOfCase(reply?.exercise);
  if (asked?.is === "failed") return <AttemptTrouble words={asked.words} />;
  if (release.is === "missing") return <NoKnowledge missing={release} />;
  if (reply === undefined || release.is === "loading")
    return (
      <TitledSheet title="Debrief">
        <p role="status">Going through the attempt ...</p>
      </TitledSheet>
    );
  return <DebriefSheet knowledge={release.value.knowledge} reply={reply} />;
}
