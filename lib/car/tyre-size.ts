import { CornerwiseError } from "../errors.ts";
import { MM_PER_INCH } from "../maths/units.ts";

/** Load index (a second one for twin wheels) and speed symbol, as printed after the size: "91V", "104/102R". */
export type ServiceDescription = string;

/** ISO metric size, with the letters before it: none, P (US passenger), LT (light truck), HL (high load), T (temporary spare). */
export interface MetricTyre {
  readonly system: "metric";
  readonly prefix: "" | "P" | "LT" | "HL" | "T";
  readonly widthMm: number;
  /** Section height as a percentage of the width. */
  readonly aspect: number;
  /** Rim code: the nominal diameter in inches. */
  readonly rim: number;
  /** The "C" of European van tyres. */
  readonly van: boolean;
  readonly service?: ServiceDescription;
}

/** Light-truck size that names its overall diameter, such as 31x10.50R15LT. */
export interface FlotationTyre {
  readonly system: "flotation";
  readonly diameterIn: number;
  readonly widthIn: number;
  readonly rim: number;
  readonly service?: ServiceDescription;
}

export type TyreSize = MetricTyre | FlotationTyre;

/** Sizes that follow from the designation. */
export interface TyreGeometry {
  /** Nominal diameter of the rim, rounded as the standard's table has it. */
  readonly rimMm: number;
  readonly sectionHeightMm: number;
  readonly designDiameterMm: number;
  /** Distance for each turn at 60 km/h under load. */
  readonly rollingCircumferenceMm: number;
}

/** Rolling circumference of a radial tyre for each mm of design diameter. */
const CIRCUMFERENCE_FACTOR = 3.05;

const CONSTRUCTION = "\\s*(?<construction>[SHVZ]?RF?|[DB-])\\s*";
const RIM = "(?<rim>\\d+(?:\\.\\d+)?)";
const AFTER =
  "(?:\\s+(?<service>\\(?\\d{2,3}(?:/\\d{2,3})?\\s?(?:[B-HJ-NP-WY]|\\(Y\\))\\)?))?" +
  "(?:\\s+(?:XL|RF|EXTRA LOAD|REINFORCED|M\\s?[+&/]\\s?S|3PMSF|TL|RFT|ROF|SSR|LOAD RANGE [B-H]|LR[B-H]|\\d{1,2}PR))*$";
const METRIC = new RegExp(
  `^(?<prefix>P|LT|HL|T)?\\s*(?<width>\\d{3})\\s*/\\s*(?<aspect>\\d{2,3})${CONSTRUCTION}${RIM}\\s*(?<suffix>C|LT)?${AFTER}`,
);
const FLOTATION = new RegExp(
  `^(?:LT)?\\s*(?<diameter>\\d{2}(?:\\.\\d{1,2})?)\\s*[X×*]\\s*(?<width>\\d{1,2}(?:\\.\\d{1,2})?)${CONSTRUCTION}${RIM}\\s*(?:LT)?${AFTER}`,
);
const NUMERIC = /^(?:LT)?\s*\d{1,2}(?:\.\d{1,2})?\s*(?:R|-)\s*\d{2}/;
const WITHOUT_RATIO = /^(?:P|LT)?\s*\d{3}\s*[SHVZ]?R\s*\d{2}/;

const LONGEST = 80;

/**
 * Reads a radial tyre's size as printed on its side: 205/55R16 91V, P225/50R16, 195/65ZR15, LT245/75R16, 31x10.50R15LT.
 *
 * Case and spaces do not matter. What is printed behind the size (load range, XL, M+S) is taken and dropped.
 * Errors: `bad-request` that names the text, what is wrong with it and what to give instead.
 * Source: ISO 4000-1 and the tyre industry's year books for the form of designations, from memory.
 */
export function parseTyreSize(text: string): TyreSize {
  const plain = text.trim().replaceAll(/\s+/g, " ").toUpperCase();
  if (plain === "") refuse(text, "is empty", "Give the size on the tyre's side, such as 205/55R16.");
  if (plain.length > LONGEST)
    refuse(text, `is longer than ${LONGEST} characters`, "Give the size alone, such as 205/55R16 91V.");
  const metric = METRIC.exec(plain)?.groups;
  if (metric !== undefined) return metricTyre(text, metric);
  const flotation = FLOTATION.exec(plain)?.groups;
  if (flotation !== undefined) return flotationTyre(text, flotation);
  if (WITHOUT_RATIO.test(plain)) {
    refuse(
      text,
      "has no height after its width",
      "Write it out, such as 155/80R13 (older sizes without it are 80 or 82; the maker's tyre data say which).",
    );
  }
  if (NUMERIC.test(plain)) {
    refuse(
      text,
      "names neither an overall diameter nor a section height",
      "Look its rolling circumference up in the maker's tyre data, or roll the car one turn of the wheel and measure, and give that instead.",
    );
  }
  return refuse(
    text,
    "is no tyre size that we know",
    "Give an ISO metric size (205/55R16 91V), one for light trucks (LT245/75R16) or a flotation size (31x10.50R15LT).",
  );
}

/** Writes a size in its usual form; `parseTyreSize` of it gives the same size. */
export function writeTyreSize(tyre: TyreSize): string {
  const size =
    tyre.system === "metric"
      ? `${tyre.prefix}${tyre.widthMm}/${tyre.aspect}R${tyre.rim}${tyre.van ? "C" : ""}`
      : `${tyre.diameterIn}x${tyre.widthIn.toFixed(2)}R${tyre.rim}LT`;
  return tyre.service === undefined ? size : `${size} ${tyre.service}`;
}

/**
 * Diameter and rolling circumference of a size.
 *
 * A flotation size is taken at its word, 25.4 mm an inch; tabled diameters are up to 1.6 % less.
 *
 * Units: mm.
 * Source: UN Regulation No. 30: D = d + 2H with H and d rounded to whole mm; circumference 3.05 D for radials at
 * 60 km/h, ETRTO Standards Manual; both from memory, and makers' figures of turns at a speed bear the factor out.
 */
export function tyreGeometry(tyre: TyreSize): TyreGeometry {
  const rimMm = Math.round(tyre.rim * MM_PER_INCH);
  const designDiameterMm =
    tyre.system === "metric"
      ? rimMm + 2 * Math.round((tyre.widthMm * tyre.aspect) / 100)
      : Math.round(tyre.diameterIn * MM_PER_INCH);
  return {
    rimMm,
    sectionHeightMm: (designDiameterMm - rimMm) / 2,
    designDiameterMm,
    rollingCircumferenceMm: CIRCUMFERENCE_FACTOR * designDiameterMm,
  };
}

type Groups = Readonly<Record<string, string | undefined>>;

function metricTyre(text: string, groups: Groups): MetricTyre {
  const widthMm = Number(groups["width"]);
  const aspect = Number(groups["aspect"]);
  if (widthMm < 105 || widthMm > 405 || widthMm % 5 !== 0)
    refuse(
      text,
      `has a width of ${widthMm} mm`,
      "Widths run from 105 to 405 mm in steps of 5; read it again.",
    );
  if (aspect < 20 || aspect > 95 || (aspect % 5 !== 0 && aspect !== 82))
    refuse(
      text,
      `has a height of ${aspect} %`,
      "Heights run from 20 to 95 % in steps of 5, or 82; read it again.",
    );
  const { rim, service } = rimAndService(text, groups);
  const suffix = groups["suffix"];
  const prefix = suffix === "LT" ? "LT" : ((groups["prefix"] ?? "") as MetricTyre["prefix"]);
  return {
    system: "metric",
    prefix,
    widthMm,
    aspect,
    rim,
    van: suffix === "C",
    ...(service === undefined ? {} : { service }),
  };
}

function flotationTyre(text: string, groups: Groups): FlotationTyre {
  const diameterIn = Number(groups["diameter"]);
  const widthIn = Number(groups["width"]);
  const { rim, service } = rimAndService(text, groups);
  if (diameterIn > 54 || diameterIn < rim + 4)
    refuse(
      text,
      `has an overall diameter of ${diameterIn} in on a ${rim} in rim`,
      "It stands first in the size, is 4 in more than the rim at least and 54 in at most; read it again.",
    );
  if (widthIn < 6 || widthIn > 20)
    refuse(text, `has a width of ${widthIn} in`, "Widths run from 6 to 20 in; read it again.");
  return { system: "flotation", diameterIn, widthIn, rim, ...(service === undefined ? {} : { service }) };
}

function rimAndService(text: string, groups: Groups): { rim: number; service: string | undefined } {
  const construction = groups["construction"] ?? "";
  if (!construction.includes("R")) {
    refuse(
      text,
      `has the construction "${construction}" (diagonal or bias-belted)`,
      "Only radial tyres (R) roll 3.05 times their diameter; measure the rolling circumference and give that instead.",
    );
  }
  const rim = Number(groups["rim"]);
  if (rim < 8 || rim > 30 || (rim * 2) % 1 !== 0) {
    refuse(
      text,
      `has a rim code of ${rim}`,
      rim >= 200
        ? "Rims in mm are not held; measure the rolling circumference and give that instead."
        : "Rim codes run from 8 to 30 in inches, halves allowed; read it again.",
    );
  }
  return { rim, service: groups["service"]?.replaceAll(/[\s()]/g, "") };
}

function refuse(text: string, what: string, mend: string): never {
  const shown = text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text;
  throw new CornerwiseError("bad-request", `tyre: ${JSON.stringify(shown)} ${what}. ${mend}`, {
    tyre: shown,
  });
}
