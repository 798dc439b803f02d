import Papa from "papaparse";
import { CornerwiseError } from "../errors.ts";
import { KM_PER_MILE } from "../maths/units.ts";
import { MOST_SAMPLES } from "./recording.ts";

/** Seconds, acceleration along x, y, z (m/s^2) and, where it was read, the road speed (km/h). */
export type Sample =
  | readonly [number, number, number, number]
  | readonly [number, number, number, number, number];

/** Units of a file whose heading does not name them. */
export interface CsvUnits {
  readonly time?: "s" | "ms" | undefined;
  readonly acceleration?: "m/s2" | "g" | undefined;
}

/** Standard gravity (3rd CGPM, 1901). Units: m/s^2. */
const STANDARD_GRAVITY = 9.80665;

/** Longer texts than this many characters are not read. */
export const LONGEST_CSV = 20_000_000;

/** What one unit of a heading is in the units of a sample, by what is measured. */
const UNITS = {
  time: { s: 1, sec: 1, secs: 1, second: 1, seconds: 1, ms: 1e-3, millisecond: 1e-3, milliseconds: 1e-3 },
  acceleration: { "m/s2": 1, "m/s^2": 1, "m/s²": 1, ms2: 1, mps2: 1, g: STANDARD_GRAVITY },
  speed: { "km/h": 1, kmh: 1, kph: 1, "m/s": 3.6, mps: 3.6, mph: KM_PER_MILE },
} as const satisfies Record<string, Record<string, number>>;

type Quantity = keyof typeof UNITS;

const NAMES: Readonly<Record<"time" | "x" | "y" | "z" | "speed", readonly string[]>> = {
  time: ["time", "t", "timestamp", "elapsed"],
  x: ["x", "ax", "accx"],
  y: ["y", "ay", "accy"],
  z: ["z", "az", "accz"],
  speed: ["speed", "velocity", "v"],
};

interface Column {
  readonly at: number;
  /** What one unit is in the units of a sample. */
  readonly factor: number;
}

/**
 * Samples of a CSV file with a heading: a time, x, y and z, and a speed if there is one; other columns are passed over.
 *
 * Shape   the separator (comma, semicolon, tab) is found out; with another one than the comma, decimals may have a comma.
 *         Units stand in the heading ("time (ms)", "x [g]", "z_ms2"), else `units` says them: none is guessed.
 * Errors  `bad-request` with the line and how to mend it.
 */
export function readRecordingCsv(text: string, units: CsvUnits = {}): Sample[] {
  if (text.length > LONGEST_CSV) {
    throw bad(
      1,
      `the file has ${text.length} characters, and at most ${LONGEST_CSV} are read; cut it to a minute`,
    );
  }
  const { data, errors, meta } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), { skipEmptyLines: false });
  const [broken] = errors.filter(({ code }) => code !== "UndetectableDelimiter");
  if (broken !== undefined) {
    throw bad((broken.row ?? 0) + 1, `the quotes do not close; take them out or double those within a text`);
  }
  const first = data.findIndex((row) => !isBlank(row));
  const heading = data[first];
  if (heading === undefined) throw bad(1, "the file is empty; it needs a heading and samples");
  const columns = columnsOf(heading, first + 1, units);
  const decimalComma = meta.delimiter !== ",";
  const samples: Sample[] = [];
  for (let i = first + 1; i < data.length; i++) {
    const row = data[i] as string[];
    if (isBlank(row)) continue;
    if (samples.length === MOST_SAMPLES) {
      throw bad(i + 1, `at most ${MOST_SAMPLES} samples are taken; cut the file to the minute that matters`);
    }
    const figure = (name: string, { at, factor }: Column): number => {
      const cell = (row[at] ?? "").trim();
      const number = cell === "" ? Number.NaN : Number(decimalComma ? cell.replace(",", ".") : cell);
      // Not by a factor of 1e-3, which leaves 0.0010000000000000002 of 1.
      const value = factor === 1e-3 ? number / 1000 : number * factor;
      if (!Number.isFinite(value)) throw bad(i + 1, `${name} is "${cell.slice(0, 40)}"; give a number`);
      return value;
    };
    const { time, x, y, z, speed } = columns;
    const sample = [figure("the time", time), figure("x", x), figure("y", y), figure("z", z)] as const;
    const before = samples.at(-1)?.[0];
    if (before !== undefined && sample[0] < before) {
      throw bad(
        i + 1,
        `the time (${sample[0]} s) is before that of the line above (${before} s); sort by time`,
      );
    }
    const spoken = speed !== undefined && (row[speed.at] ?? "").trim() !== "";
    const kmh = spoken ? figure("the speed", speed) : 0;
    if (kmh < 0) throw bad(i + 1, `the speed is ${kmh} km/h; give 0 or more, or leave it empty`);
    samples.push(spoken ? [...sample, kmh] : sample);
  }
  return samples;
}

/** A recording as CSV (RFC 4180) that `readRecordingCsv` reads back to the same figures. */
export function writeRecordingCsv(samples: Iterable<Sample>): string {
  const rows = Array.from(samples, (sample) => [...sample, ...(sample.length < 5 ? [""] : [])]);
  const fields = ["time (s)", "x (m/s2)", "y (m/s2)", "z (m/s2)", "speed (km/h)"];
  return `${Papa.unparse([fields, ...rows], { newline: "\r\n" })}\r\n`;
}

function isBlank(row: readonly string[] | undefined): boolean {
  return row === undefined || row.every((cell) => cell.trim() === "");
}

function columnsOf(heading: readonly string[], line: number, units: CsvUnits) {
  const names = heading.map(splitName);
  const find = (wanted: keyof typeof NAMES, quantity: Quantity, chosen?: string): Column | undefined => {
    const found = names.flatMap(({ words }, at) =>
      words.some((w) => NAMES[wanted].includes(w)) ? [at] : [],
    );
    const [at, another] = found;
    if (at === undefined) return undefined;
    if (another !== undefined) {
      const both = `"${heading[at]?.trim()}" and "${heading[another]?.trim()}"`;
      throw bad(line, `${both} could both be ${wanted}; leave one of them in the file`);
    }
    const known: Readonly<Record<string, number>> = UNITS[quantity];
    const unit = names[at]?.unit ?? chosen;
    if (unit === undefined) {
      throw bad(
        line,
        `nothing says the unit of "${heading[at]?.trim()}"; choose it, or write it behind the name: one of ${Object.keys(known).join(", ")}`,
      );
    }
    const factor = Object.hasOwn(known, unit) ? known[unit] : undefined;
    if (factor === undefined) {
      throw bad(
        line,
        `"${unit}" is no unit of ${wanted} that is known; use one of ${Object.keys(known).join(", ")}`,
      );
    }
    return { at, factor };
  };
  const time = find("time", "time", units.time);
  const [x, y, z] = (["x", "y", "z"] as const).map((axis) => find(axis, "acceleration", units.acceleration));
  if (time === undefined || x === undefined || y === undefined || z === undefined) {
    const missing = Object.entries({ time, x, y, z }).flatMap(([name, column]) => (column ? [] : [name]));
    throw bad(line, `no column is named ${missing.join(", ")}; the heading needs time, x, y and z`);
  }
  return { time, x, y, z, speed: find("speed", "speed") };
}

const UNIT_NAMES = new Set<string>(Object.values(UNITS).flatMap((known) => Object.keys(known)));

/** "Acc_X [m/s^2]" to its words and its unit. */
function splitName(cell: string): { readonly words: readonly string[]; readonly unit: string | undefined } {
  const name = cell.trim().toLowerCase();
  const bracketed = /^(.*?)\s*[([]\s*([^)\]]*?)\s*[)\]]$/.exec(name);
  if (bracketed !== null) return { words: wordsOf(bracketed[1] ?? ""), unit: bracketed[2] ?? "" };
  const words = wordsOf(name);
  const last = words.at(-1) ?? "";
  return words.length > 1 && UNIT_NAMES.has(last)
    ? { words: words.slice(0, -1), unit: last }
    : { words, unit: undefined };
}

function wordsOf(name: string): string[] {
  return name.split(/[^a-z0-9]+/).filter((word) => word !== "");
}

function bad(line: number, what: string): CornerwiseError {
  return new CornerwiseError("bad-request", `Line ${line}: ${what}.`, { line });
}
