import { hoursWords } from "../../text/amounts.ts";

const WIDTH = 320;
const HEIGHT = 96;
const LEFT = 6;
const RIGHT = 6;
const TOP = 22;
const BOTTOM = 20;
const MOST_BARS = 14;
/** Widths that a bar may stand for. Units: minutes. */
const STEPS = [10, 15, 30, 60, 120, 240];

/** How many of the visits played take how long. */
export function VisitsDrawing({
  minutes,
  p50,
  p90,
}: {
  readonly minutes: readonly number[];
  readonly p50: number;
  readonly p90: number;
}) {
  const longest = Math.max(1, ...minutes);
  const step = STEPS.find((s) => longest / s <= MOST_BARS) ?? Math.ceil(longest / MOST_BARS);
  const bars = Array.from({ length: Math.floor(longest / step) + 1 }, () => 0);
  for (const m of minutes) {
    const bar = Math.floor(m / step);
    bars[bar] = (bars[bar] ?? 0) + 1;
  }
  const most = Math.max(...bars);
  const x = (m: number) => LEFT + (m / (bars.length * step)) * (WIDTH - LEFT - RIGHT);
  const y = (count: number) => TOP + (1 - count / most) * (HEIGHT - TOP - BOTTOM);
  const marks = [
    { at: p50, name: "half", anchor: "end", dx: -3 },
    { at: p90, name: "9 of 10", anchor: "start", dx: 3 },
  ] as const;
  return (
    <figure className="visits">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Visits by length: half within ${hoursWords(p50)}, nine of ten within ${hoursWords(p90)}, the longest ${hoursWords(longest)}`}
      >
        {bars.map((count, bar) => (
          <rect
            // The bars stand for fixed spans of time.
            key={bar * step}
            className="visit-bar"
            x={x(bar * step) + 1}
            width={Math.max(1, x((bar + 1) * step) - x(bar * step) - 2)}
            y={y(count)}
            height={HEIGHT - BOTTOM - y(count)}
          />
        ))}
        <line className="curve-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} />
        {marks.map(({ at, name, anchor, dx }) => (
          <g key={name}>
            <line className="visit-mark" x1={x(at)} x2={x(at)} y1={TOP - 12} y2={HEIGHT - BOTTOM} />
            <text
              className="curve-word"
              x={x(at) + (x(at) > WIDTH - 60 ? -3 : dx)}
              y={TOP - 6}
              textAnchor={x(at) > WIDTH - 60 ? "end" : anchor}
            >
              {name}
            </text>
          </g>
        ))}
        <text className="curve-word" x={LEFT} y={HEIGHT - 5}>
          0
        </text>
        <text className="curve-word" x={WIDTH - RIGHT} y={HEIGHT - 5} textAnchor="end">
          {hoursWords(bars.length * step)}
        </text>
      </svg>
    </figure>
  );
}
