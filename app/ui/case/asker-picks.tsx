"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { pagePerson } from "../../store/person-here.ts";
import type { Asker, Settings } from "../../store/use-settings.ts";
import { capital, nameOfSetUp } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { MissingTools } from "./missing-tools.tsx";
import { Choice, type ChoiceOption } from "../choice.tsx";

const ASKERS: readonly ChoiceOption<Asker>[] = [
  { value: "technician-lift", name: "technician with a lift" },
  { value: "technician", name: "technician without a lift" },
  { value: "driver", name: "driver at the car" },
  { value: "owner", name: "owner on the phone" },
];

/** Who does the checks, with what help, and what state the car is in. */
export function AskerPicks({
  knowledge,
  state,
  settings,
  onSettings,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const asker = ASKERS.find((a) => a.value === settings.asker)?.name ?? "";
  const signedIn = pagePerson() !== undefined;
  const setUp = state.setUp ?? knowledge.setUps.start;
  return (
    <Fold
      title={
        <>
          {capital(asker)}, {settings.helper ? "helper at hand" : "alone"}; car{" "}
          {nameOfSetUp(knowledge, setUp)}
          {settings.missingTools.length > 0 && <>; without {settings.missingTools.join(", ")}</>}
        </>
      }
    >
      <div className="fields">
        <Choice
          id="asker"
          label="Who does the checks?"
          value={settings.asker}
          options={ASKERS}
          onChange={(value) => onSettings({ asker: value })}
        />
        <Choice
          id="set-up"
          label="The car is now"
          value={setUp}
          options={knowledge.setUps.setUps.map((s) => ({ value: s.id, name: s.name }))}
          onChange={(value) => append({ kind: "set-up", setUp: value })}
        />
        <Choice
          id="length-unit"
          label="Small lengths in"
          value={settings.length}
          options={[
            { value: "mm", name: "mm" },
            { value: "inch", name: "inches" },
          ]}
          onChange={(value) => onSettings({ length: value })}
        />
        <div>
          <label htmlFor="signed">Entries are signed</label>
          <input
            id="signed"
            autoComplete="off"
            maxLength={80}
            value={settings.by}
            readOnly={signedIn}
            aria-describedby={signedIn ? "signed-why" : undefined}
            onChange={(event) => onSettings({ by: event.target.value })}
          />
          {signedIn && (
            <p className="small soft" id="signed-why">
              The name of the account that is signed in.
            </p>
          )}
        </div>
        <label className="tick">
          <input
            type="checkbox"
            checked={settings.helper}
            onChange={(event) => onSettings({ helper: event.target.checked })}
          />
          A helper is at hand
        </label>
        {(settings.asker === "technician" || settings.asker === "technician-lift") && (
          <label className="tick">
            <input
              type="checkbox"
              checked={settings.canAsk}
              onChange={(event) => onSettings({ canAsk: event.target.checked })}
            />
            The customer can be asked now
          </label>
        )}
      </div>
      <MissingTools tools={settings.missingTools} onTools={(missingTools) => onSettings({ missingTools })} />
    </Fold>
  );
}
