"use client";
import { useSearchParams } from "next/navigation";
import { useEffect } from "react";
import { ReleaseInUse, useReleaseOfCase } from "../../knowledge/use-knowledge.ts";
import { useCaseIsOpen } from "../../offline/case-open.ts";
import { TitledSheet } from "../titled-sheet.tsx";
import { AttemptTrouble, NoKnowledge } from "./attempt-trouble.tsx";
import { useAttempt } from "./use-attempt.ts";
import { WorkSheet } from "./work-sheet.tsx";

/** The attempt that the address names as `id`, to be worked; once it has ended, its debrief. */
export function WorkScreen() {
  const id = useSearchParams().get("id") ?? "";
  return <Work key={id} id={id} />;
}

function Work({ id }: { readonly id: string }) {
  useCaseIsOpen();
  const work = useAttempt(id);
  const { screen } = work;
  const attempt = screen.is === "ready" ? screen.attempt : undefined;
  const release = useReleaseOfCase(attempt?.state);
  const ended = attempt?.ended === true;
  useEffect(() => {
    if (ended) window.location.replace(`/exercise/debrief?id=${encodeURIComponent(id)}`);
  }, [ended, id]);
  if (screen.is === "failed") return <AttemptTrouble words={screen.words} />;
  if (release.is === "missing") return <NoKnowledge missing={release} />;
  if (attempt === undefined || ended || release.is === "loading")
    return (
      <TitledSheet title="Exercise">
        <p role="status">Opening the exercise ...</p>
      </TitledSheet>
    );
  return (
    <ReleaseInUse key={release.value.sha256} value={release.value}>
      <WorkSheet knowledge={release.value.knowledge} attempt={attempt} work={work} />
    </ReleaseInUse>
  );
}
