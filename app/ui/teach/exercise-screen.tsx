"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import { useState } from "react";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import { ReleaseInUse, useReleaseOfCase } from "../../knowledge/use-knowledge.ts";
import { newId } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { useSettings } from "../../store/use-settings.ts";
import { TitledSheet } from "../titled-sheet.tsx";
import { newSeed } from "./new-seed.ts";
import type { KeptExercise } from "./replies.ts";
import { emptySetting, settingOf, settingOfDraft } from "./setting.ts";
import { SettingSheet } from "./setting-sheet.tsx";
import { TeachGate } from "./teach-gate.tsx";
import { useExerciseRelease } from "./use-exercise-release.ts";
import { useKeptExercise } from "./use-kept-exercise.ts";

/** The exercise that the address names, or a new one. */
export function ExerciseScreen() {
  const id = useSearchParams().get("id");
  return (
    <TitledSheet title={id === null ? "A new exercise" : "An exercise"}>
      <p className="row no-print">
        <Link className="button" href="/teach">
          All exercises
        </Link>
      </p>
      <TeachGate>{id === null ? <NewExercise /> : <OldExercise key={id} id={id} />}</TeachGate>
    </TitledSheet>
  );
}

function NewExercise() {
  const release = useExerciseRelease();
  if (release.is === "loading") return <p role="status">Getting the knowledge ...</p>;
  if (release.is === "failed")
    return (
      <p className="trouble" role="alert">
        The knowledge did not arrive: {release.message} Load the page again.
      </p>
    );
  return <WithDraft kept={undefined} release={release.value} onKept={() => undefined} />;
}

function OldExercise({ id }: { readonly id: string }) {
  const [kept, renew] = useKeptExercise(id);
  if (kept.is === "looking") return <p role="status">Opening the exercise ...</p>;
  if (kept.is === "failed")
    return (
      <p className="trouble" role="alert">
        {kept.message}
      </p>
    );
  return <WithDraft kept={kept.value} release={kept.value.exercise.release} onKept={renew} />;
}

interface DraftProps {
  /** As the server keeps it; undefined for one that was never saved. */
  readonly kept: KeptExercise | undefined;
  /** Release as the exercise names it. */
  readonly release: string;
  readonly onKept: (kept: KeptExercise) => void;
}

/** Opens the release, and lays what was typed and not saved over what is kept. */
function WithDraft({ kept, release: named, onKept }: DraftProps) {
  const draft = useDraft(`teach/${kept?.id ?? "new"}`);
  const [fresh] = useState(() => emptySetting(`set-${newId().slice(0, 12)}`, named, newSeed()));
  const [text, , ready] = draft;
  // A draft goes on with the release that it was begun with.
  const begun = settingOfDraft(text, fresh)?.release ?? named;
  const release = useReleaseOfCase(ready ? { release: begun } : undefined);
  if (!ready || release.is === "loading") return <p role="status">Getting the knowledge ...</p>;
  if (release.is === "missing")
    return (
      <p className="trouble" role="alert">
        Knowledge {release.version}, which this exercise is set with, is not here. {release.reason}
      </p>
    );
  return (
    <ReleaseInUse key={release.value.sha256} value={release.value}>
      <Ready kept={kept} release={release.value} draft={draft} fresh={fresh} onKept={onKept} />
    </ReleaseInUse>
  );
}

function Ready({
  kept,
  release,
  draft: [text, setText],
  fresh,
  onKept,
}: Pick<DraftProps, "kept" | "onKept"> & {
  readonly release: OpenRelease;
  readonly draft: ReturnType<typeof useDraft>;
  readonly fresh: ReturnType<typeof emptySetting>;
}) {
  const [units, onUnits, loaded] = useSettings();
  if (!loaded) return <p role="status">Opening the exercise ...</p>;
  const saved = kept && settingOf(kept.exercise, release.knowledge.car.attributes, units);
  const drafted = settingOfDraft(text, saved ?? fresh);
  return (
    <SettingSheet
      kept={kept}
      release={release}
      setting={drafted ?? saved ?? fresh}
      changed={drafted !== undefined}
      units={units}
      onUnits={onUnits}
      onDraft={(setting) => setText(setting === undefined ? "" : JSON.stringify(setting))}
      onKept={onKept}
    />
  );
}
