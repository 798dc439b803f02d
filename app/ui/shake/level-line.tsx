import { curvePath } from "../curve-path.ts";

const WIDTH = 320;
const HEIGHT = 64;
const MOST = 50;
/** Below this a line at the bottom is still: a phone on a table. Units: m/s^2. */
const LEAST_SCALE = 0.5;

/** How strongly it shakes now: a line of the last ten seconds. */
export function LevelLine({ levels }: { readonly levels: readonly number[] }) {
  const scale = Math.max(LEAST_SCALE, ...levels);
  const points = levels.map(
    (level, i) =>
      [
        ((i + MOST - levels.length) / (MOST - 1)) * WIDTH,
        HEIGHT - 2 - (level / scale) * (HEIGHT - 6),
      ] as const,
  );
  return (
    <svg
      className="level-line"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <line className="curve-grid" x1={0} x2={WIDTH} y1={HEIGHT - 2} y2={HEIGHT - 2} />
      <path className="curve-line" d={curvePath(points)} />
    </svg>
  );
}
