"use client";
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import { readReply } from "../../sync/read-reply.ts";
import type { Units } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { carLine } from "../case/car-fields.ts";
import { CarForm } from "../case/car-form.tsx";
import { Fold } from "../fold.tsx";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import { goToPart, SheetPart } from "../sheet-part.tsx";
import { DrawPart } from "./draw-part.tsx";
import { HandOutPart } from "./hand-out-part.tsx";
import { HiddenPart } from "./hidden-part.tsx";
import { NamePart } from "./name-part.tsx";
import { PreviewPart } from "./preview-part.tsx";
import { ExerciseHead, type KeptExercise } from "./replies.ts";
import { ResultsPart } from "./results-part.tsx";
import { SaidPart } from "./said-part.tsx";
import { readSetting, type Setting } from "./setting.ts";
import { TermsPart } from "./terms-part.tsx";

interface Props {
  readonly kept: KeptExercise | undefined;
  readonly release: OpenRelease;
  readonly setting: Setting;
  /** Something was changed that the server does not have. */
  readonly changed: boolean;
  readonly units: Units;
  readonly onUnits: (units: Partial<Units>) => void;
  /** Keeps it on this device; undefined: back to what the server has. */
  readonly onDraft: (setting: Setting | undefined) => void;
  readonly onKept: (kept: KeptExercise) => void;
}

/** The sheet on which an exercise is set, looked at, saved and handed out. */
export function SettingSheet({ kept, release, setting, changed, units, onUnits, onDraft, onKept }: Props) {
  const router = useRouter();
  const { busy, failed, send } = useRequest();
  const [asked, setAsked] = useState(false);
  const { attributes } = release.knowledge.car;
  const { car, problems, exercise } = readSetting(setting, attributes, units);
  // What is still empty is no mistake before somebody wants to save it.
  const shown = asked ? problems : mistakes(problems);
  const onSetting = (change: Partial<Setting>) => onDraft({ ...setting, ...change });
  const parts = { release, setting, car, problems: shown, onSetting };

  const save = async () => {
    setAsked(true);
    if (exercise === undefined) {
      goToPart(firstPart(problems));
      return;
    }
    const path =
      kept === undefined ? "/api/v1/exercises" : `/api/v1/exercises/${encodeURIComponent(kept.id)}`;
    const reply = await send(
      kept === undefined
        ? { method: "POST", path, body: exercise }
        : { method: "PUT", path, body: exercise, ifMatch: `"${kept.version}"` },
    );
    const head = readReply(reply, ExerciseHead);
    if (head === undefined) return;
    onDraft(undefined);
    if (kept === undefined) router.replace(`/teach/exercise?id=${encodeURIComponent(head.id)}`);
    else onKept({ ...head, exercise });
  };

  const preview = (
    <PreviewPart release={release} exercise={exercise ?? unnamed(setting, attributes, units)} />
  );
  const built = carLine(attributes, car, units);
  return (
    <>
      {kept !== undefined && (
        <>
          <p className="lead">
            <strong>{kept.name}</strong>
          </p>
          <HandOutPart kept={kept} changed={changed} />
          {preview}
        </>
      )}
      <DrawPart {...parts} units={units} onDrawn={() => goToPart("preview")} />
      <NamePart {...parts} />
      <SheetPart id="car" title="The car">
        <p className="small soft">
          What is left out is as with a typical car, and the trainee is not told it either.
        </p>
        <Fold
          openAtFirst={Object.keys(setting.car).some((field) => problems[field] !== undefined)}
          title={built === "" ? "A typical car (change)" : `${capital(built)} (change)`}
        >
          <CarForm
            attributes={attributes}
            fields={setting.car}
            problems={problems}
            units={units}
            onFields={(fields) => onSetting({ car: fields })}
            onUnits={onUnits}
          />
        </Fold>
      </SheetPart>
      <HiddenPart {...parts} />
      <SaidPart {...parts} />
      <TermsPart {...parts} />
      <ResultsPart {...parts} />
      {kept === undefined && preview}
      <p className="small soft">
        {kept === undefined
          ? "Not saved yet: what is set so far is kept on this device."
          : changed
            ? "Changed since it was saved: the change is kept on this device until it is saved. What was handed out stays as it was."
            : "Saved as it stands here."}
      </p>
      {changed && (
        <button type="button" onClick={() => onDraft(undefined)}>
          {kept === undefined ? "Begin anew" : "Back to what is saved"}
        </button>
      )}
      <Failed words={failed} />
      {(kept === undefined || changed) && (
        <div className="next-bar always">
          <button type="button" className="main" disabled={busy} onClick={() => void save()}>
            {busy ? "Saving ..." : "Save the exercise"}
          </button>
        </div>
      )}
    </>
  );
}

/** An exercise can be looked at before it has a name. */
function unnamed(setting: Setting, attributes: Parameters<typeof readSetting>[1], units: Units) {
  return setting.name.trim() === ""
    ? readSetting({ ...setting, name: "not named yet" }, attributes, units).exercise
    : undefined;
}

/** Fields that may simply be empty so far. */
const MAY_WAIT = new Set(["name", "faults", "said"]);

function mistakes(problems: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(problems).filter(([field]) => !MAY_WAIT.has(field)));
}

/** The part of the sheet where the first problem is mended. */
function firstPart(problems: Readonly<Record<string, string>>): string {
  const has = (...fields: readonly string[]): boolean => fields.some((f) => problems[f] !== undefined);
  if (has("name")) return "name";
  if (has("faults")) return "hidden";
  if (has("said", "text")) return "said";
  return has("mostMinutes", "unreliable") ? "terms" : "car";
}
