"use client";
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import type { Units } from "../../text/amounts.ts";
import { CarForm } from "../case/car-form.tsx";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import { goToPart, SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import { DrawPart } from "./draw-part.tsx";
import { HandOutPart } from "./hand-out-part.tsx";
import { HiddenPart } from "./hidden-part.tsx";
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
    const head = ExerciseHead.safeParse(reply?.json);
    if (!head.success) return;
    onDraft(undefined);
    if (kept === undefined) router.replace(`/teach/exercise?id=${encodeURIComponent(head.data.id)}`);
    else onKept({ ...head.data, exercise });
  };

  return (
    <>
      <DrawPart {...parts} units={units} onDrawn={() => goToPart("preview")} />
      <SheetPart id="name" title="Its name">
        <div className="fields">
          <TypedField
            id="exercise-name"
            label="Name, as trainees see it"
            text
            value={setting.name}
            problem={shown["name"]}
            onChange={(name) => onSetting({ name })}
          />
        </div>
        <label htmlFor="exercise-about">A word to the trainee</label>
        <textarea
          id="exercise-about"
          className="low"
          rows={2}
          maxLength={2000}
          value={setting.about}
          onChange={(event) => onSetting({ about: event.target.value })}
        />
        <div className="fields">
          <TypedField
            id="exercise-vehicle"
            label="Vehicle"
            text
            value={setting.vehicle}
            onChange={(vehicle) => onSetting({ vehicle })}
          />
          <TypedField
            id="exercise-customer"
            label="Customer"
            text
            value={setting.customer}
            onChange={(customer) => onSetting({ customer })}
          />
        </div>
        <p className="small soft">Invented ones, please: no real cars, plates or people.</p>
      </SheetPart>
      <SheetPart id="car" title="The car">
        <p className="small soft">
          What is left out is as with a typical car, and the trainee is not told it either.
        </p>
        <CarForm
          attributes={attributes}
          fields={setting.car}
          problems={problems}
          units={units}
          onFields={(fields) => onSetting({ car: fields })}
          onUnits={onUnits}
        />
      </SheetPart>
      <HiddenPart {...parts} />
      <SaidPart {...parts} />
      <TermsPart {...parts} />
      <ResultsPart {...parts} />
      <PreviewPart release={release} exercise={exercise ?? unnamed(setting, attributes, units)} />
      {kept !== undefined && <HandOutPart kept={kept} changed={changed} />}
      <p className="small soft">
        {kept === undefined
          ? "Not saved yet: what is set so far is kept on this device."
          : changed
            ? "Changed since it was saved: the change is kept on this device until it is saved. What was handed out stays as it was."
            : "Saved as it stands here."}
      </p>
      {(kept === undefined ? changed : changed) && (
        <button type="button" onClick={() => onDraft(undefined)}>
          {kept === undefined ? "Begin anew" : "Back to what is saved"}
        </button>
      )}
      <Failed words={failed} />
      <div className="next-bar always">
        <button
          type="button"
          className="main"
          disabled={busy || (kept !== undefined && !changed)}
          onClick={() => void save()}
        >
          {busy ? "Saving ..." : kept !== undefined && !changed ? "Saved" : "Save the exercise"}
        </button>
      </div>
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
