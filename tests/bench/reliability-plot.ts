import type { ReliableTenth } from "./reliability-table.ts";

const SIZE = 300;
const EDGE = 46;

/** Reliability plots beside each other: share that was true against the chance given, with one standard error each way. */
export function reliabilityPlot(
  plots: readonly { readonly title: string; readonly bins: readonly ReliableTenth[] }[],
): string {
  const width = SIZE + 2 * EDGE;
  const one = ({ title, bins }: (typeof plots)[number], at: number): string => {
    const x = (p: number): string => (EDGE + SIZE * p).toFixed(1);
    const y = (p: number): string => (EDGE + SIZE * (1 - Math.min(1, Math.max(0, p)))).toFixed(1);
    const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1].map(
      (p) =>
        `<text x="${x(p)}" y="${EDGE + SIZE + 16}" text-anchor="middle">${Math.round(100 * p)}</text>` +
        `<text x="${EDGE - 6}" y="${y(p)}" dy="4" text-anchor="end">${Math.round(100 * p)}</text>`,
    );
    const marks = bins.map(({ forecast, observed, error }) => {
      return (
        `<line x1="${x(forecast)}" x2="${x(forecast)}" y1="${y(observed - error)}" y2="${y(observed + error)}"/>` +
        `<circle cx="${x(forecast)}" cy="${y(observed)}" r="3.5" fill="#123f63"/>`
      );
    });
    return [
      `<g transform="translate(${at * width} 0)" stroke="none" fill="#191713">`,
      `<text x="${EDGE}" y="${EDGE - 14}">${title}</text>`,
      `<g stroke="#191713" fill="none"><rect x="${EDGE}" y="${EDGE}" width="${SIZE}" height="${SIZE}"/>`,
      `<line x1="${x(0)}" y1="${y(0)}" x2="${x(1)}" y2="${y(1)}" stroke-dasharray="4 4"/>${marks.join("")}</g>`,
      ticks.join(""),
      `<text x="${x(0.5)}" y="${EDGE + SIZE + 34}" text-anchor="middle">chance given, per cent (up: true, per cent)</text>`,
      "</g>",
    ].join("\n");
  };
  const height = SIZE + 2 * EDGE;
  const about = plots.map((p) => p.title).join("; ");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width * plots.length} ${height}" font-family="sans-serif" font-size="12" role="img" aria-label="Reliability plots: ${about}">
<rect width="100%" height="100%" fill="#fffefa"/>
${plots.map(one).join("\n")}
</svg>
`;
}
