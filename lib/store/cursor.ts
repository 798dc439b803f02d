import { z } from "zod";
import { StoreProblem } from "./problem.ts";

/** Orders that a list of cases comes in, with the columns that it goes by; the last one tells cases apart. */
export const CASE_ORDERS = {
  /** The last changed first. */
  changed: { by: ["changed_at", "id"], direction: "desc" },
  /** Open ones first, the most urgent of them first, of these the one that was opened first. */
  urgent: { by: ["closed", "urgency", "opened_at", "id"], direction: "asc" },
  /** Open ones first, the one that was opened first. */
  oldest: { by: ["closed", "opened_at", "id"], direction: "asc" },
} as const;

export type CaseOrder = keyof typeof CASE_ORDERS;

type Column = (typeof CASE_ORDERS)[CaseOrder]["by"][number];
export type CasePlace = Readonly<Record<Column, string | number>>;

export const PlaceId = z.string().max(64);
export const PlaceMoment = z.string().max(40);
const Whole = z.number().int().min(0).max(1000);
const VALUES: { readonly [C in Column]: z.ZodType<string | number> } = {
  closed: Whole,
  urgency: Whole,
  opened_at: PlaceMoment,
  changed_at: PlaceMoment,
  id: PlaceId,
};

/** A place in a list as a text: what the list goes by, of the last row that was given. */
export function writePlace(values: readonly (string | number)[]): string {
  return Buffer.from(JSON.stringify(values)).toString("base64url");
}

/**
 * The values at the place that the text names; `list` is what the list is called.
 *
 * Errors  StoreProblem bad-cursor: the text is not one that `writePlace` made of values of these forms.
 */
export function readPlace<V extends string | number>(
  text: string,
  forms: readonly z.ZodType<V>[],
  list: string,
): readonly V[] {
  try {
    return z.tuple(forms as [z.ZodType<V>]).parse(JSON.parse(Buffer.from(text, "base64url").toString()));
  } catch (cause) {
    throw new StoreProblem(
      "bad-cursor",
      `This is no place in ${list}. Begin at the first page, and take \`next\` from there.`,
      {},
      { cause },
    );
  }
}

/** The place of a case in a list of that order. */
export function writeCursor(order: CaseOrder, row: CasePlace): string {
  const place = CASE_ORDERS[order].by.map((column) => row[column]);
  return writePlace(order === "changed" ? place : [order, ...place]);
}

/**
 * The values of an order's columns at the place that the text names.
 *
 * Errors  StoreProblem bad-cursor: the text is not one that `writeCursor` made for this order.
 */
export function readCursor(order: CaseOrder, text: string): readonly (string | number)[] {
  const values = CASE_ORDERS[order].by.map((column) => VALUES[column]);
  const forms = order === "changed" ? values : [z.literal(order), ...values];
  return readPlace(text, forms, "the list of cases in this order").slice(-values.length);
}
