import type { WearCurve } from "../../../lib/knowledge/pages/index.ts";
import { percent } from "../../text/chance-words.ts";
import { curvePath } from "../curve-path.ts";
import { ageWords, milesWords } from "./wear-words.ts";

const BOX = { left: 46, right: 14, top: 12, bottom: 44, width: 360, height: 220 } as const;
const WIDE = BOX.width - BOX.left - BOX.right;
const HIGH = BOX.height - BOX.top - BOX.bottom;
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;

/** The wear curve as a drawing, and the same as a table. */
export function WearPlot({ curve, title }: { readonly curve: WearCurve; readonly title: string }) {
  const x = (at: number) => BOX.left + (at / curve.until) * WIDE;
  const y = (failed: number) => BOX.top + (1 - failed) * HIGH;
  const line = curvePath(curve.points.map(({ at, failed }) => [x(at), y(failed)]));
  const ticks = [0, ...curve.rows.map(({ at }) => at)];
  const unit = curve.unit === "km" ? "thousand km" : "years";
  return (
    <figure className="wear">
      <svg
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        role="img"
        aria-label={`${title}; the table below says the same`}
      >
        <g aria-hidden="true">
          {SHARES.map((share) => (
            <g key={share}>
              <line className="curve-grid" x1={BOX.left} x2={BOX.left + WIDE} y1={y(share)} y2={y(share)} />
              <text className="wear-word" x={BOX.left - 6} y={y(share) + 4} textAnchor="end">
                {share * 100} %
              </text>
            </g>
          ))}
          {ticks.map((at) => (
            <g key={at}>
              <line className="wear-tick" x1={x(at)} x2={x(at)} y1={y(0)} y2={y(0) + 5} />
              <text className="wear-word" x={x(at)} y={y(0) + 18} textAnchor="middle">
                {curve.unit === "km" ? at / 1000 : at}
              </text>
            </g>
          ))}
          <text className="wear-word" x={BOX.left + WIDE / 2} y={BOX.height - 6} textAnchor="middle">
            {unit} since it was new
          </text>
          <path className="wear-line" d={line} />
        </g>
      </svg>
      <table className="wear-table">
        <caption className="small soft">Share failed by then, if none was renewed</caption>
        <thead>
          <tr>
            <th scope="col">{curve.unit === "km" ? "km" : "Years"}</th>
            {curve.unit === "km" && <th scope="col">Miles</th>}
            <th scope="col">Failed</th>
          </tr>
        </thead>
        <tbody>
          {curve.rows.map(({ at, failed }) => (
            <tr key={at}>
              <th scope="row">{ageWords(at)}</th>
              {curve.unit === "km" && <td>{milesWords(at)}</td>}
              <td>{percent(failed)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}
