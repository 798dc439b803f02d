"use client";
import { useMemo } from "react";
import type { Decision } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Settings } from "../../store/use-settings.ts";
import { hoursWords } from "../../text/amounts.ts";
import { moneyWords, ownCosts } from "../../text/cost-fields.ts";
import { Fold } from "../fold.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { CostForm } from "./cost-form.tsx";
import { RepairOrder } from "./repair-order.tsx";

const WAYS = { repair: "Repair now", check: "Check on", refer: "Refer it" } as const;

/** Repairing now, checking on and handing over, side by side. */
export function ChoicesPart({
  knowledge,
  decision,
  deciding,
  failed,
  settings,
  onSettings,
}: {
  readonly knowledge: Knowledge;
  readonly decision: Decision | undefined;
  readonly deciding: boolean;
  readonly failed: string | undefined;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
}) {
  const { problems } = useMemo(() => ownCosts(knowledge, settings.costs), [knowledge, settings.costs]);
  const invented = Object.values(settings.costs).every((text) => text.trim() === "");
  return (
    <SheetPart id="choices" title="Repair, check on or refer" busy={deciding}>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          What pays could not be worked out: {failed}
        </p>
      )}
      {decision === undefined && failed === undefined && <p role="status">Comparing ...</p>}
      {decision !== undefined && decision.choices.length > 0 && (
        <>
          <p>
            <strong>{decision.why}</strong>
          </p>
          <ChoiceTable decision={decision} inMoney={settings.inMoney} />
          {invented && (
            <p className="small soft">Reckoned with invented rates and prices: put in your own below.</p>
          )}
          <label className="tick">
            <input
              type="checkbox"
              checked={settings.inMoney}
              onChange={(event) => onSettings({ inMoney: event.target.checked })}
            />
            Show money instead of time
          </label>
          <RepairOrder knowledge={knowledge} decision={decision} inMoney={settings.inMoney} />
        </>
      )}
      {Object.keys(problems).length > 0 && (
        <p className="trouble">
          A figure under &quot;Your rates and prices&quot; cannot be; the invented one counts in its place.
        </p>
      )}
      <Fold title="Your rates and prices">
        <CostForm
          knowledge={knowledge}
          typed={settings.costs}
          problems={problems}
          onTyped={(costs) => onSettings({ costs })}
        />
      </Fold>
    </SheetPart>
  );
}

function ChoiceTable({ decision, inMoney }: { readonly decision: Decision; readonly inMoney: boolean }) {
  const { choices, kind, currency } = decision;
  return (
    <table className="figures">
      <caption className="small soft">
        Expected {inMoney ? "cost" : "time, parts turned into time,"} from here until the complaint is gone
      </caption>
      <thead>
        <tr>
          <th scope="col">Way</th>
          <th scope="col" className="figure">
            {inMoney ? `Cost (${currency})` : "Time"}
          </th>
        </tr>
      </thead>
      <tbody>
        {choices.map(({ way, minutes, money, steps, rough }) => (
          <tr key={way} aria-current={way === kind ? "true" : undefined}>
            <th scope="row">
              {WAYS[way]}
              {way === kind && <span className="proven">do this now</span>}
              <span className="small soft detail">
                {way === "check" &&
                  (rough
                    ? "several checks until it is known, by a rule of thumb; start with the next one above"
                    : `the best ${steps.length === 1 ? "check" : `${steps.length} checks`}, then what pays; start with the next one above`)}
                {way === "repair" &&
                  `${steps.length === 1 ? "the repair" : `the ${steps.length} repairs`} below, looking after each whether it is gone`}
                {way === "refer" && "others find it; the repair is in it"}
              </span>
            </th>
            <td className="figure">{inMoney ? moneyWords(money, currency) : hoursWords(minutes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
