"use client";
import type { Decision } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { hoursWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { moneyWords } from "../../text/cost-fields.ts";
import { capital, nameOfRepair } from "../../text/names.ts";

const MOST = 5;

/** The likeliest repairs in the order in which they pay: chance over cost. */
export function RepairOrder({
  knowledge,
  decision,
  inMoney,
}: {
  readonly knowledge: Knowledge;
  readonly decision: Decision;
  readonly inMoney: boolean;
}) {
  const { repairs, currency, moneyAMinute } = decision;
  const likely = repairs
    .slice(0, 2 * MOST)
    .toSorted((a, b) => b.chance / b.minutes - a.chance / a.minutes)
    .slice(0, MOST);
  if (likely.length === 0) return null;
  return (
    <>
      <h3>Repairs, in the order in which they pay</h3>
      <table className="figures">
        <caption className="small soft">Largest chance for its cost first; part and work in the cost</caption>
        <thead>
          <tr>
            <th scope="col">Repair</th>
            <th scope="col" className="figure">
              Chance
            </th>
            <th scope="col" className="figure">
              {inMoney ? "Cost" : "Time"}
            </th>
          </tr>
        </thead>
        <tbody>
          {likely.map(({ repair, chance, minutes }) => (
            <tr key={repair}>
              <th scope="row">{capital(nameOfRepair(knowledge, repair))}</th>
              <td className="figure">{percent(chance)}</td>
              <td className="figure">
                {inMoney ? moneyWords(minutes * moneyAMinute, currency) : hoursWords(minutes)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">The chance is that the repair is needed, not that it is enough.</p>
    </>
  );
}
