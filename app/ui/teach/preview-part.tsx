"use client";
import { useEffect, useState } from "react";
import { askExercises } from "../../engine/exercise-client.ts";
import type { PreviewShown } from "../../engine/exercise-protocol.ts";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import type { Exercise } from "../../../lib/training/index.ts";
import { messageOf } from "../../text/message-of.ts";
import { SheetPart } from "../sheet-part.tsx";
import { PreviewFacts, PreviewPath, PreviewTraps, PreviewWarnings } from "./preview-pieces.tsx";

/** A preview of an exercise that changes: the last one stays while a newer is worked out. */
export function usePreview(
  release: OpenRelease,
  exercise: Exercise | undefined,
): { readonly shown: PreviewShown | undefined; readonly busy: boolean; readonly failed: string | undefined } {
  // Names and words change nothing of it.
  const key =
    exercise === undefined
      ? undefined
      : JSON.stringify({
          ...exercise,
          id: "preview",
          name: "preview",
          about: "",
          vehicle: "",
          customer: "",
          text: "",
        });
  const [state, setState] = useState<{ key?: string; shown?: PreviewShown; failed?: string }>({});
  useEffect(() => {
    if (key === undefined) return;
    let gone = false;
    // Somebody who is still ticking is not worked for at every tap.
    const timer = setTimeout(() => {
      askExercises(release, "preview", { exercise: JSON.parse(key) as Exercise }).then(
        (shown) => !gone && setState({ key, shown }),
        (error: unknown) => !gone && setState({ key, failed: messageOf(error) }),
      );
    }, 300);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [release, key]);
  if (key === undefined) return { shown: undefined, busy: false, failed: undefined };
  return {
    shown: state.shown,
    busy: state.key !== key,
    failed: state.key === key ? state.failed : undefined,
  };
}

/** The exercise looked at before it is handed out. */
export function PreviewPart({
  release,
  exercise,
}: {
  readonly release: OpenRelease;
  readonly exercise: Exercise | undefined;
}) {
  const { shown, busy, failed } = usePreview(release, exercise);
  const { knowledge } = release;
  return (
    <SheetPart id="preview" title="How it goes" busy={busy}>
      {exercise === undefined && <p className="small soft">Shown once something is hidden and said.</p>}
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      <p role="status" className="small soft">
        {busy && "Going the best way ..."}
      </p>
      {exercise !== undefined && shown !== undefined && failed === undefined && (
        <>
          <PreviewWarnings knowledge={knowledge} exercise={exercise} shown={shown} />
          <PreviewFacts shown={shown} />
          <PreviewTraps knowledge={knowledge} shown={shown} />
          <h3>The best way</h3>
          <PreviewPath knowledge={knowledge} shown={shown} />
        </>
      )}
    </SheetPart>
  );
}
