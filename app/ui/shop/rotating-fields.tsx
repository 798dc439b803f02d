"use client";
import type { Settings } from "../../store/use-settings.ts";
import { speedUnit } from "../../text/amounts.ts";
import { Choice } from "../choice.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import { MOST_MEASURED } from "./rotating-request.ts";

type Fields = Readonly<Record<string, string>>;

/** What turns, how fast the car goes, and what was measured. */
export function RotatingFields({
  fields,
  problems,
  ready,
  settings,
  onSettings,
  onFields,
}: {
  readonly fields: Fields;
  readonly problems: Fields;
  readonly ready: boolean;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly onFields: (fields: Fields) => void;
}) {
  const field = (id: string, label: string, unit?: string, text = false) => (
    <TypedField
      id={`turning-${id}`}
      label={label}
      {...(unit !== undefined && { unit })}
      text={text}
      value={fields[id] ?? ""}
      disabled={!ready}
      problem={problems[id]}
      onChange={(value) => onFields({ ...fields, [id]: value })}
    />
  );
  const speed = speedUnit(settings);
  // One empty line more than are filled.
  const filled = Array.from({ length: MOST_MEASURED }, (_, i) => (fields[`hz${i}`] ?? "").trim() !== "");
  const lines = Math.min(MOST_MEASURED, filled.lastIndexOf(true) + 2);
  return (
    <>
      <SheetPart id="car-turning" title="The car">
        <div className="fields">
          {field("tyre", "Tyre size", "as on its side, such as 205/55R16", true)}
          {field("circumference", "Or rolling circumference", "mm")}
          {field("finalDrive", "Final drive", "turns of the shaft for one of a wheel")}
          {field("cylinders", "Cylinders")}
        </div>
      </SheetPart>
      <SheetPart id="running" title="While it shakes">
        <div className="fields">
          {field("speed", "Road speed", speed)}
          <Choice
            id="turning-unit"
            label="Speeds in"
            value={settings.distance}
            options={[
              { value: "km", name: "km/h" },
              { value: "miles", name: "mph" },
            ]}
            onChange={(distance) => onSettings({ distance })}
          />
          {field("gear", "Gear ratio", "engine turns for one of the shaft")}
          {field("rpm", "Or engine speed", "rpm")}
          {field("hz0", "Measured shake", "Hz")}
        </div>
        {Array.from({ length: Math.max(0, lines - 1) }, (_, k) => k + 1).map((i) => (
          <div className="fields" key={i} role="group" aria-label={`Measurement ${i + 1}`}>
            {field(`hz${i}`, `Measured again (${i + 1})`, "Hz")}
            {field(`speed${i}`, `At road speed (${i + 1})`, `${speed}; empty: as above`)}
            {field(`rpm${i}`, `And engine speed (${i + 1})`, "rpm")}
          </div>
        ))}
        <p className="small soft">
          A telephone fixed where the shake is felt will do. A passenger reads and writes; the driver drives.
        </p>
      </SheetPart>
    </>
  );
}
