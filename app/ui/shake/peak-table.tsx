import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { capital } from "../../text/names.ts";
import { hzWords, nameOfShaft } from "../shop/order-table.tsx";
import type { LookedAt } from "./read-shake.ts";
import { strengthWords } from "./spectrum-plot.tsx";

/** From this share of the highest frequency on, a peak may as well be something just above it. */
const NEAR_THE_LIMIT = 0.9;

/** What the plot shows, in words: each peak and what it may be. */
export function PeakTable({
  knowledge,
  looked,
  highestHz,
}: {
  readonly knowledge: Knowledge;
  readonly looked: readonly LookedAt[];
  readonly highestHz: number;
}) {
  return (
    <table className="figures peaks">
      <caption className="small soft">Strongest first</caption>
      <thead>
        <tr>
          <th scope="col">Peak</th>
          <th scope="col" className="figure">
            Hz
          </th>
          <th scope="col" className="figure">
            m/s²
          </th>
          <th scope="col">What it may be</th>
        </tr>
      </thead>
      <tbody>
        {looked.map(({ peak: { hz, amplitude }, answer }, i) => {
          const [own] = answer?.measured ?? [];
          return (
            <tr key={hz}>
              <th scope="row">{i + 1}</th>
              <td className="figure">{hzWords(hz)}</td>
              <td className="figure">{strengthWords(amplitude)}</td>
              <td>
                {own?.matches.map((m) => (
                  <span className="detail" key={`${m.shaft} ${m.order}`}>
                    {capital(nameOfShaft(knowledge, m.shaft))}, order {m.order}: {hzWords(m.hz)} Hz,{" "}
                    {Math.abs(m.offPercent).toFixed(1)} % {m.offPercent < 0 ? "below" : "above"}
                  </span>
                ))}
                {own !== undefined && own.matches.length === 0 && (
                  <span className="detail">Nothing that is listed turns so.</span>
                )}
                {own?.folded !== undefined && own.folded.length > 0 && (
                  <span className="detail">
                    Or too fast for this sensor: {foldedWords(knowledge, own.folded)}.
                  </span>
                )}
                {hz > NEAR_THE_LIMIT * highestHz && (
                  <span className="detail">
                    Near the limit of this sensor: it may be something faster that shows here.
                  </span>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** "engine, order 2, at 40.0 Hz; ..." */
function foldedWords(
  knowledge: Knowledge,
  folded: NonNullable<OrdersAnswer["measured"][number]["folded"]>,
): string {
  return folded
    .map(({ shaft, order, hz }) => `${nameOfShaft(knowledge, shaft)}, order ${order}, at ${hzWords(hz)} Hz`)
    .join("; ");
}
