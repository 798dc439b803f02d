import { readFileSync } from "node:fs";
import { join } from "node:path";

/** A solved complaint from a public source; `complaint` is all that was known before anybody looked. */
export interface FieldCase {
  readonly id: string;
  readonly source: { readonly kind: string; readonly url: string };
  readonly complaint: string;
  readonly vehicle: {
    readonly drive: string | null;
    readonly frontLayout: string | null;
    readonly rearLayout: string | null;
    readonly odometerKm: number | null;
    readonly ageYears: number | null;
  };
  readonly decisive: string | null;
  readonly cause: string;
  readonly causeParts: readonly string[];
}

/** The solved cases of a file beside this one, facts paraphrased; each line names its source. */
export function fieldCases(file = "field-cases.jsonl"): FieldCase[] {
  // By the root of the repository, so that a bundle finds them as well.
  return readFileSync(join(import.meta.dirname, "../../tests/field", file), "utf8")
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as FieldCase);
}

const DRIVES: Readonly<Record<string, string>> = { FWD: "front", RWD: "rear", AWD: "all", "4WD": "all" };
const FRONTS: Readonly<Record<string, string>> = { strut: "strut", "double wishbone": "double-wishbone" };
const REARS: Readonly<Record<string, string>> = {
  "twist beam": "twist-beam",
  "multi-link": "multi-link",
  "solid axle with leaf springs": "leaf-axle",
  "solid axle": "coil-axle",
};

/** What is known of the car, in the words of the car attributes; what is not known is left out. */
export function carOf({ vehicle }: FieldCase): Record<string, unknown> {
  return {
    drive: DRIVES[vehicle.drive ?? ""] ?? null,
    front: { layout: FRONTS[vehicle.frontLayout ?? ""] ?? null },
    rear: { layout: REARS[vehicle.rearLayout ?? ""] ?? null },
    odometerKm: vehicle.odometerKm,
    ageYears: vehicle.ageYears,
  };
}

/** Does a part with these names stand for one of the case's causes? By whole words, whatever the case and plural. */
export function namesCause(names: readonly string[], causes: readonly string[]): boolean {
  const plain = (text: string): string =>
    text
      .toLowerCase()
      .replaceAll(/[^a-z ]/g, " ")
      .split(/\s+/)
      .map((word) => word.replace(/s$/, ""))
      .join(" ")
      .trim();
  return causes.some((cause) => names.some((name) => plain(name) === plain(cause)));
}
