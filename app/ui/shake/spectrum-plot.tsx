import type { VibrationSpectrum } from "../../../lib/car/vibration-peaks.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { capital } from "../../text/names.ts";
import { curvePath } from "../curve-path.ts";
import { hzWords, nameOfShaft } from "../shop/order-table.tsx";

const WIDTH = 360;
const LEFT = 38;
const RIGHT = 10;
const TOP = 26;
const BASE = 170;
/** Room for the figures below the line. */
const FIGURES = 38;
const LANE = 28;
/** Names of orders that would stand closer than this are left out; their marks stay. */
const APART = 20;
/** Orders marked of each shaft: those that the findings are about, and what may be mistaken for them. */
const HIGHEST_ORDER = 4;
const LEAST_WIDTH_HZ = 30;
const CEILINGS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
const STEPS = [1, 2, 5, 10, 20, 50, 100];

/** Strength by frequency, with the peaks numbered as in the table, and below it what turns at which rate. */
export function SpectrumPlot({
  knowledge,
  spectrum,
  samples,
  orders,
}: {
  readonly knowledge: Knowledge;
  readonly spectrum: VibrationSpectrum;
  /** How many readings the spectrum is of. */
  readonly samples: number;
  /** Empty while tyre or speed is not known. */
  readonly orders: OrdersAnswer["orders"];
}) {
  const { periodogram, peaks, highestHz } = spectrum;
  const marked = orders.filter(({ order }) => order <= HIGHEST_ORDER);
  const farthest = Math.max(LEAST_WIDTH_HZ, ...[...marked, ...peaks].map(({ hz }) => hz * 1.1));
  const mostHz = Math.min(highestHz, farthest);
  const x = (hz: number) => LEFT + (hz / mostHz) * (WIDTH - LEFT - RIGHT);
  const heights = columns(periodogram, samples, mostHz);
  const top = Math.max(...heights.map(([, a]) => a), ...peaks.map(({ amplitude }) => amplitude));
  const ceiling = CEILINGS.find((c) => top <= c) ?? top;
  const y = (amplitude: number) => TOP + (1 - amplitude / ceiling) * (BASE - TOP);
  const step = STEPS.find((s) => mostHz / s <= 8) ?? 200;
  const figures = Array.from({ length: Math.floor(mostHz / step) + 1 }, (_, k) => k * step);
  const lanes = knowledge.orders.shafts
    .map(({ shaft }) => ({ shaft, orders: marked.filter((o) => o.shaft === shaft && o.hz <= mostHz) }))
    .filter((lane) => lane.orders.length > 0);
  const height = BASE + FIGURES + lanes.length * LANE + 4;
  const said = peaks.map(({ hz, amplitude }) => `${hzWords(hz)} Hz, ${strengthWords(amplitude)} m/s²`);
  return (
    <figure className="spectrum">
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        role="img"
        aria-label={`Strength of the shake by frequency. ${said.length === 0 ? "No peak." : `Peaks: ${said.join("; ")}.`}`}
      >
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line
              className="curve-grid"
              x1={LEFT}
              x2={WIDTH - RIGHT}
              y1={y(share * ceiling)}
              y2={y(share * ceiling)}
            />
            <text className="curve-word" x={LEFT - 4} y={y(share * ceiling) + 4} textAnchor="end">
              {Number((share * ceiling).toPrecision(2))}
            </text>
          </g>
        ))}
        <text className="curve-word" x={LEFT - 4} y={11} textAnchor="start">
          m/s²
        </text>
        {figures.map((hz) => (
          <text key={hz} className="curve-word" x={x(hz)} y={BASE + 15} textAnchor="middle">
            {hz}
          </text>
        ))}
        <text className="curve-word" x={WIDTH - RIGHT} y={BASE + 29} textAnchor="end">
          Hz
        </text>
        <path className="spectrum-line" d={curvePath(heights.map(([hz, a]) => [x(hz), y(a)]))} />
        {lanes.map(({ shaft, orders: own }, row) => (
          <Lane
            key={shaft}
            name={capital(nameOfShaft(knowledge, shaft))}
            dash={row}
            y={BASE + FIGURES + row * LANE}
            orders={own}
            x={x}
          />
        ))}
        {peaks
          .filter(({ hz }) => hz <= mostHz)
          .map(({ hz, amplitude }) => (
            <g key={hz}>
              <path
                className="spectrum-peak"
                d={`M${x(hz).toFixed(1)} ${(y(amplitude) - 3).toFixed(1)}l-4 -8h8z`}
              />
              <text
                className="curve-word spectrum-number"
                x={x(hz)}
                y={y(amplitude) - 14}
                textAnchor="middle"
              >
                {peaks.findIndex((peak) => peak.hz === hz) + 1}
              </text>
            </g>
          ))}
      </svg>
      <figcaption className="small soft">
        Triangles: the peaks by number.
        {lanes.length > 0 && " Below: vibrations a turn of what turns on this car, at this speed."}
      </figcaption>
    </figure>
  );
}

function Lane({
  name,
  dash,
  y,
  orders,
  x,
}: {
  readonly name: string;
  readonly dash: number;
  readonly y: number;
  readonly orders: OrdersAnswer["orders"];
  readonly x: (hz: number) => number;
}) {
  const shown = withNames(orders, x);
  return (
    <g>
      <text className="curve-word" x={2} y={y + 10}>
        {name}
      </text>
      <line className="curve-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y + 14} y2={y + 14} />
      {shown.map(({ order, at, named }) => (
        <g key={order}>
          <line
            className={`order-mark order-mark-${dash}`}
            x1={at}
            x2={at}
            y1={TOP}
            y2={named ? y : y + 14}
          />
          {named && (
            <text className="curve-word order-name" x={at} y={y + 11} textAnchor="middle">
              {order}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** Where each order stands, and whether there is room for its name beside the one named before. */
function withNames(orders: OrdersAnswer["orders"], x: (hz: number) => number) {
  let lastAt = Number.NEGATIVE_INFINITY;
  return orders.map(({ order, hz }) => {
    const at = x(hz);
    const named = at - lastAt >= APART;
    if (named) lastAt = at;
    return { order, at, named };
  });
}

/** m/s^2 with two figures that count. */
export function strengthWords(amplitude: number): string {
  return String(Number(amplitude.toPrecision(2)));
}

/** The highest amplitude in each column of the drawing: frequency (Hz) and amplitude (m/s^2). */
function columns(
  { fromHz, stepHz, power }: VibrationSpectrum["periodogram"],
  samples: number,
  mostHz: number,
): [number, number][] {
  const wide = Math.max(stepHz, mostHz / (WIDTH - LEFT - RIGHT));
  const highest = new Map<number, number>();
  power.forEach((p, k) => {
    const hz = fromHz + k * stepHz;
    if (hz > mostHz) return;
    const column = Math.floor(hz / wide);
    highest.set(column, Math.max(highest.get(column) ?? 0, p));
  });
  // A pure tone of amplitude A in N readings has the power N A^2 / 4 (lombScargle).
  return [...highest].map(([column, p]) => [(column + 0.5) * wide, Math.sqrt((4 * p) / samples)]);
}
