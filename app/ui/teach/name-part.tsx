"use client";
import { SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import type { PartProps } from "./part-props.ts";

/** What the trainee knows it by. */
export function NamePart({
  setting,
  problems,
  onSetting,
}: Pick<PartProps, "setting" | "problems" | "onSetting">) {
  return (
    <SheetPart id="name" title="Its name">
      <div className="fields">
        <TypedField
          id="exercise-name"
          label="Name, as trainees see it"
          text
          value={setting.name}
          problem={problems["name"]}
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
  );
}
