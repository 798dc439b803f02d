import type { WearLine } from "../../../lib/engine/index.ts";
import { shownDistance, type Units } from "../../text/amounts.ts";
import { curvePath } from "../curve-path.ts";
import { columnPercent } from "./wear-rows.ts";

const WIDTH = 320;
const HEIGHT = 170;
const LEFT = 44;
const RIGHT = 12;
const TOP = 12;
const BOTTOM = 34;
const CEILINGS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];

/** Chance of failing within the next so many kilometres, as a curve. */
export function WearCurve({ line, units }: { readonly line: WearLine; readonly units: Units }) {
  const points = [{ km: 0, chance: 0, ifNeverRenewed: 0 }, ...line.ahead];
  const farthest = points.at(-1)?.km ?? 1;
  const own = line.age.ownAge;
  const largest = Math.max(...points.map((p) => Math.max(p.chance, own ? 0 : p.ifNeverRenewed)));
  const ceiling = CEILINGS.find((c) => largest <= c) ?? 1;
  const x = (km: number) => LEFT + (km / farthest) * (WIDTH - LEFT - RIGHT);
  const y = (p: number) => TOP + (1 - p / ceiling) * (HEIGHT - TOP - BOTTOM);
  const path = (value: (p: (typeof points)[number]) => number) =>
    curvePath(points.map((p) => [x(p.km), y(value(p))]));
  const distance = (km: number) => `${shownDistance(km, units).toLocaleString("en-GB")} ${units.distance}`;
  const words = line.ahead.map((p) => `${columnPercent(p.chance)} within ${distance(p.km)}`).join(", ");
  return (
    <figure className="wear-curve">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Chance of failing: ${words}`}>
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line
              className="curve-grid"
              x1={LEFT}
              x2={WIDTH - RIGHT}
              y1={y(share * ceiling)}
              y2={y(share * ceiling)}
            />
            <text className="curve-word" x={LEFT - 5} y={y(share * ceiling) + 4} textAnchor="end">
              {columnPercent(share * ceiling)}
            </text>
          </g>
        ))}
        {[0, farthest / 2, farthest].map((km) => (
          <text
            key={km}
            className="curve-word"
            x={x(km)}
            y={HEIGHT - BOTTOM + 15}
            textAnchor={km === farthest ? "end" : "middle"}
          >
            {shownDistance(km, units).toLocaleString("en-GB")}
          </text>
        ))}
        <text className="curve-word" x={(LEFT + WIDTH) / 2} y={HEIGHT - 4} textAnchor="middle">
          further {units.distance} from now
        </text>
        {!own && <path className="curve-first" d={path((p) => p.ifNeverRenewed)} />}
        <path className="curve-line" d={path((p) => p.chance)} />
      </svg>
      <figcaption className="small soft">
        Chance that one which works now fails within the distance.
        {!own && " Dashed: if it was never renewed; solid: renewals on such cars averaged in."}
      </figcaption>
    </figure>
  );
}
