"use client";
import type { Settings } from "../../store/use-settings.ts";
import { speedUnit } from "../../text/amounts.ts";
import { SheetPart } from "../sheet-part.tsx";
import { MOST_MEASURED } from "./rotating-request.ts";
import { CarThatTurns, EngineSpeed, SpeedUnit, TurningField, type TurningForm } from "./turning-field.tsx";

/** What turns, how fast the car goes, and what was measured. */
export function RotatingFields({
  form,
  settings,
  onSettings,
}: {
  readonly form: TurningForm;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
}) {
  const speed = speedUnit(settings);
  // One empty line more than are filled.
  const filled = Array.from({ length: MOST_MEASURED }, (_, i) => (form.fields[`hz${i}`] ?? "").trim() !== "");
  const lines = Math.min(MOST_MEASURED, filled.lastIndexOf(true) + 2);
  return (
    <>
      <SheetPart id="car-turning" title="The car">
        <CarThatTurns form={form} />
      </SheetPart>
      <SheetPart id="running" title="While it shakes">
        <div className="fields">
          <TurningField form={form} id="speed" label="Road speed" unit={speed} />
          <SpeedUnit settings={settings} onSettings={onSettings} />
          <EngineSpeed form={form} />
          <TurningField form={form} id="hz0" label="Measured shake" unit="Hz" />
        </div>
        {Array.from({ length: Math.max(0, lines - 1) }, (_, k) => k + 1).map((i) => (
          <div className="fields" key={i} role="group" aria-label={`Measurement ${i + 1}`}>
            <TurningField form={form} id={`hz${i}`} label={`Measured again (${i + 1})`} unit="Hz" />
            <TurningField
              form={form}
              id={`speed${i}`}
              label={`At road speed (${i + 1})`}
              unit={`${speed}; empty: as above`}
            />
            <TurningField form={form} id={`rpm${i}`} label={`And engine speed (${i + 1})`} unit="rpm" />
          </div>
        ))}
        <p className="small soft">
          A passenger reads and writes; the driver drives. A phone can measure it: see above.
        </p>
      </SheetPart>
    </>
  );
}
