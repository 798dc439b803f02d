import type { Entry } from "../case/entries.ts";
import { foldCase } from "../case/fold.ts";
import { columnText, searchText } from "./plain-text.ts";
import type { CasesTable } from "./tables.ts";

/** Kinds of entry that can change what the list of cases shows, and those that can take such a one back. */
export const HEAD_KINDS: readonly string[] = ["opened", "verdict", "reopened", "retracted"];

export type CaseColumns = Pick<
  CasesTable,
  "opened_at" | "customer" | "vehicle" | "plate" | "search" | "invented" | "closed"
>;

/**
 * The columns of a case that follow from its entries.
 *
 * Shape   entries: all of the case, or only those of HEAD_KINDS; an opening among them.
 */
export function caseColumns(entries: readonly Entry[]): CaseColumns {
  const { openedAt = "", customer, vehicle, plate, invented, verdict } = foldCase(entries);
  // A plate is looked for with and without its spaces.
  const search = searchText(
    [customer, vehicle, plate ?? "", (plate ?? "").replaceAll(/[\s-]/g, "")].join(" "),
  );
  return {
    opened_at: openedAt,
    customer: columnText(customer),
    vehicle: columnText(vehicle),
    plate: plate === undefined ? null : columnText(plate),
    search,
    invented: invented ? 1 : 0,
    closed: verdict === undefined ? 0 : 1,
  };
}
