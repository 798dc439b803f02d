import type { WearLine } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital, nameOfPart, nameOfPlace } from "../../text/names.ts";

/** Distances that the curve goes through, as far as anybody plans. */
export const CURVE_KM = [2_500, 5_000, 10_000, 15_000, 20_000, 30_000, 40_000, 50_000] as const;

/** Distances that the table shows and sorts by; 0 is now. */
export const HORIZONS_KM = [0, 10_000, 20_000] as const;
export type Horizon = (typeof HORIZONS_KM)[number];

/** One line of the table: places that stand alike are one. */
export interface WearRow {
  readonly key: string;
  readonly part: string;
  readonly fault: string;
  readonly places: string;
  readonly line: WearLine;
}

/** Chance of a line at a horizon: of having failed now, or of failing within the distance. */
export function chanceAt(line: WearLine, km: number): number {
  return km === 0 ? line.now : (line.ahead.find((a) => a.km === km)?.chance ?? 0);
}

/** Lines of the same fault with the same figures put together, largest at the horizon first. */
export function wearRows(knowledge: Knowledge, lines: readonly WearLine[], horizon: Horizon): WearRow[] {
  const groups = new Map<string, WearLine[]>();
  for (const line of lines) {
    const figures = [line.now, ...line.ahead.map((a) => a.chance), line.onCar, line.age.km];
    const key = `${line.fault} ${figures.map((f) => f.toPrecision(6)).join(" ")}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups]
    .flatMap(([key, [line, ...others]]) => {
      if (line === undefined) return [];
      const faults = knowledge.faults.find((f) => f.id === line.fault);
      const places = [line, ...others].map((l) => nameOfPlace(knowledge, l.place));
      const row: WearRow = {
        key,
        part: capital(nameOfPart(knowledge, line.part)),
        fault: faults?.name ?? line.fault,
        places: places.join(", "),
        line,
      };
      return [row];
    })
    .sort((a, b) => chanceAt(b.line, horizon) - chanceAt(a.line, horizon) || (a.key < b.key ? -1 : 1));
}

/** A chance in a narrow column. */
export function columnPercent(p: number): string {
  if (p <= 0) return "0 %";
  if (p < 0.001) return "<0.1 %";
  return `${(100 * p).toFixed(p < 0.0995 ? 1 : 0)} %`;
}
