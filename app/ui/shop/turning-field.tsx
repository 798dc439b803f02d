"use client";
import type { Settings } from "../../store/use-settings.ts";
import { Choice } from "../choice.tsx";
import { TypedField } from "../typed-field.tsx";

type Fields = Readonly<Record<string, string>>;

/** What the forms about turning parts have in common: they share one draft. */
export interface TurningForm {
  readonly fields: Fields;
  readonly problems: Fields;
  readonly ready: boolean;
  readonly onFields: (fields: Fields) => void;
}

/** One field of the form of turning parts. */
export function TurningField({
  form: { fields, problems, ready, onFields },
  id,
  label,
  unit,
  text = false,
}: {
  readonly form: TurningForm;
  readonly id: string;
  readonly label: string;
  readonly unit?: string;
  /** Takes letters too. */
  readonly text?: boolean;
}) {
  return (
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
}

/** What of the car decides how fast it all turns. */
export function CarThatTurns({ form }: { readonly form: TurningForm }) {
  return (
    <div className="fields">
      <TurningField form={form} id="tyre" label="Tyre size" unit="as on its side, such as 205/55R16" text />
      <TurningField form={form} id="circumference" label="Or rolling circumference" unit="mm" />
      <TurningField
        form={form}
        id="finalDrive"
        label="Final drive"
        unit="turns of the shaft for one of a wheel"
      />
      <TurningField form={form} id="cylinders" label="Cylinders" />
    </div>
  );
}

/** Gear or engine speed, for what turns with the engine. */
export function EngineSpeed({ form }: { readonly form: TurningForm }) {
  return (
    <>
      <TurningField form={form} id="gear" label="Gear ratio" unit="engine turns for one of the shaft" />
      <TurningField form={form} id="rpm" label="Or engine speed" unit="rpm" />
    </>
  );
}

/** The unit that speeds are typed and shown in. */
export function SpeedUnit({
  settings,
  onSettings,
}: {
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
}) {
  return (
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
  );
}
