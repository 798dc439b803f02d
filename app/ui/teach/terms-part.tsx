"use client";
import { Fold } from "../fold.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import type { PartProps } from "./part-props.ts";

const TICKS: readonly { readonly field: "lift" | "helper" | "hints" | "ranking"; readonly label: string }[] =
  [
    { field: "lift", label: "There is a lift on whose ramps the car can stand" },
    { field: "helper", label: "There is a second person" },
    { field: "hints", label: "Good next checks are proposed" },
    { field: "ranking", label: "The ranking is shown" },
  ];

/** What the trainee has to work with. */
export function TermsPart({ release, setting, problems, onSetting }: PartProps) {
  const { knowledge } = release;
  const { missingTools } = setting;
  const tools = [...new Set(knowledge.checks.flatMap((c) => c.tools))].sort();
  const trust = Math.round(100 * (1 - knowledge.reports.features));
  return (
    <SheetPart id="terms" title="What there is to work with">
      {TICKS.map(({ field, label }) => (
        <label key={field} className="tick">
          <input
            type="checkbox"
            checked={setting[field]}
            onChange={(event) => onSetting({ [field]: event.target.checked })}
          />
          {label}
        </label>
      ))}
      <div className="fields">
        <TypedField
          id="terms-minutes"
          label="Time on the ramp"
          unit="minutes, empty: no limit"
          value={setting.mostMinutes}
          problem={problems["mostMinutes"]}
          onChange={(mostMinutes) => onSetting({ mostMinutes })}
        />
        <TypedField
          id="terms-unreliable"
          label="What the customer says is beside the point"
          unit={`% of the time, empty: ${trust}`}
          value={setting.unreliable}
          problem={problems["unreliable"]}
          onChange={(unreliable) => onSetting({ unreliable })}
        />
      </div>
      <Fold
        title={
          <>
            Tools{" "}
            <span className="soft">
              ({missingTools.length === 0 ? "all are there" : `${missingTools.length} missing`})
            </span>
          </>
        }
      >
        <p className="small soft">
          Checks that need one that is missing cannot be made. 40 at most may be missing.
        </p>
        {tools.map((tool) => {
          const there = !missingTools.includes(tool);
          return (
            <label key={tool} className="tick">
              <input
                type="checkbox"
                checked={there}
                disabled={there && missingTools.length >= 40}
                onChange={() =>
                  onSetting({
                    missingTools: there ? [...missingTools, tool] : missingTools.filter((t) => t !== tool),
                  })
                }
              />
              {tool}
            </label>
          );
        })}
      </Fold>
    </SheetPart>
  );
}
