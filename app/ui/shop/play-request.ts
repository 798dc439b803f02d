import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { PlayRequest } from "../../../lib/requests/play-request.ts";
import { readField } from "./read-fields.ts";

type Fields = Readonly<Record<string, string>>;
type Quantity = Knowledge["limits"]["quantities"][number];

/** The form of free play, read. */
export interface ReadPlay {
  readonly problems: Fields;
  readonly request: PlayRequest | undefined;
}

const MM_PER_INCH = 25.4;

/** Reads the form of a quantity. */
export function readPlay(fields: Fields, { id, circle }: Quantity): ReadPlay {
  const problems: Record<string, string> = {};
  const degrees = fields["unit"] === "deg" && circle !== undefined;
  const unit = degrees ? "deg" : fields["unit"] === "in" ? "in" : "mm";
  const circleUnit = fields["circleUnit"] === "in" ? "in" : "mm";
  const scale = circleUnit === "in" ? MM_PER_INCH : 1;
  const value = readField(fields, problems, "value", {
    least: 0,
    most: unit === "deg" ? 90 : unit === "in" ? 20 : 500,
    such: unit === "deg" ? "5" : unit === "in" ? "0.5" : "12",
  });
  const diameter =
    circle === undefined
      ? undefined
      : readField(fields, problems, "circle", {
          least: Math.ceil(100 / scale),
          most: Math.floor(1500 / scale),
          such: circleUnit === "in" ? "15" : "380",
        });
  const rim = readField(fields, problems, "rim", { least: 8, most: 30, such: "16" });
  if (unit === "deg" && value !== undefined && (fields["circle"]?.trim() ?? "") === "")
    problems["circle"] = `Degrees need the diameter of ${circle}.`;
  if (value === undefined || Object.keys(problems).length > 0) return { problems, request: undefined };
  const country = fields["country"] ?? "";
  const place = fields["place"] ?? "";
  return {
    problems,
    request: {
      quantity: id,
      value,
      unit,
      ...(diameter !== undefined && { circle: { value: diameter, unit: circleUnit } }),
      ...(rim !== undefined && { rim: { value: rim, unit: "in" } }),
      ...(country !== "" && { country }),
      ...(place !== "" && { place }),
    },
  };
}
