"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { costFields } from "../../text/cost-fields.ts";

/** The workshop's own figures; every one may be left empty. */
export function CostForm({
  knowledge,
  typed,
  problems,
  onTyped,
}: {
  readonly knowledge: Knowledge;
  readonly typed: Readonly<Record<string, string>>;
  readonly problems: Readonly<Record<string, string>>;
  readonly onTyped: (typed: Readonly<Record<string, string>>) => void;
}) {
  const fields = costFields(knowledge);
  const currency = typed["currency"]?.trim() || knowledge.costs.currency;
  return (
    <>
      <p className="small">
        <strong>The figures shown in grey are invented.</strong> Type your own over them; they are kept on
        this device.
      </p>
      <div className="fields">
        {fields.map(({ id, name, unit, usual }) => {
          const problem = problems[id];
          return (
            <div key={id}>
              <label htmlFor={`cost-${id}`}>
                {name}{" "}
                {unit !== "currency" && (
                  <span className="soft">
                    ({unit === "money" ? currency.slice(0, 3).toUpperCase() : "min"})
                  </span>
                )}
              </label>
              <input
                id={`cost-${id}`}
                inputMode={unit === "currency" ? "text" : "decimal"}
                autoComplete="off"
                maxLength={20}
                placeholder={`${usual} (invented)`}
                value={typed[id] ?? ""}
                aria-invalid={problem !== undefined}
                aria-describedby={problem === undefined ? undefined : `cost-${id}-problem`}
                onChange={(event) => onTyped({ ...typed, [id]: event.target.value })}
              />
              {problem !== undefined && (
                <p className="trouble small" id={`cost-${id}-problem`}>
                  {problem}
                </p>
              )}
            </div>
          );
        })}
      </div>
      {Object.values(typed).some((text) => text.trim() !== "") && (
        <button type="button" onClick={() => onTyped({})}>
          Back to the invented figures
        </button>
      )}
    </>
  );
}
