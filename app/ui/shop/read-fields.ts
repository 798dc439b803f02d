import { typedNumber } from "../../text/amounts.ts";

/** What a field for a figure takes. */
export interface FieldLimits {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
  /** A figure as it may be typed. */
  readonly such: string;
}

/** The figure of a field; undefined when it is empty or cannot be, which is then put among the problems. */
export function readField(
  fields: Readonly<Record<string, string>>,
  problems: Record<string, string>,
  id: string,
  { least, most, whole = false, such }: FieldLimits,
): number | undefined {
  const text = fields[id]?.trim() ?? "";
  if (text === "") return undefined;
  const number = typedNumber(text);
  if (number !== undefined && number >= least && number <= most && (!whole || Number.isInteger(number)))
    return number;
  problems[id] =
    `"${text}" cannot be: give a ${whole ? "whole number" : "number"} from ${least} to ${most}, such as ${such}.`;
  return undefined;
}
