import { performance } from "node:perf_hooks";

/** Milliseconds that a piece of work takes. */
export function milliseconds(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** The value below which a share of the samples lies (nearest rank). */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = samples.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? Number.NaN;
}

/** A table of text with right-aligned columns. */
export function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const cells = [head, ...rows].map((row) =>
    row.map((cell) => (typeof cell === "number" ? rounded(cell) : cell)),
  );
  const widths = head.map((_, column) => Math.max(...cells.map((row) => (row[column] ?? "").length)));
  return cells
    .map((row) => row.map((cell, column) => cell.padStart(widths[column] ?? 0)).join("  "))
    .join("\n");
}

function rounded(value: number): string {
  return Number.isInteger(value) ? String(value) : value.toPrecision(3);
}
