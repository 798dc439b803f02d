import type { Entry } from "../case/entries.ts";
import { UNKNOWN_RANK, WEIGHED_KINDS } from "../case/case-urgency.ts";
import { foldCase } from "../case/fold.ts";
import { columnText, searchText } from "./plain-text.ts";
import type { CasesTable } from "./tables.ts";

/** Kinds of entry that can change what the list of cases shows, and those that can take such a one back. */
export const HEAD_KINDS: readonly string[] = ["opened", "verdict", "assigned", "reopened", "retracted"];

export type CaseColumns = Pick<
  CasesTable,
  | "opened_at"
  | "customer"
  | "vehicle"
  | "plate"
  | "search"
  | "invented"
  | "closed"
  | "assigned_to"
  | "assigned_name"
>;

/** The columns of a case whose urgency nobody has reckoned yet. */
export const NOT_RECKONED: Pick<
  CasesTable,
  "reckoned_version" | "urgency" | "level" | "danger" | "reckon_problem"
> = { reckoned_version: 0, urgency: UNKNOWN_RANK, level: null, danger: null, reckon_problem: null };

/** How many of the entries there are up to the last one that can change how urgent the case is; 0: none can. */
export function toldCount(entries: readonly Pick<Entry, "kind">[]): number {
  return entries.findLastIndex(({ kind }) => WEIGHED_KINDS.includes(kind)) + 1;
}

/**
 * The columns of a case that follow from its entries.
 *
 * Shape   entries: all of the case, or only those of HEAD_KINDS; an opening among them.
 */
export function caseColumns(entries: readonly Entry[]): CaseColumns {
  const { openedAt = "", customer, vehicle, plate, invented, verdict, assigned } = foldCase(entries);
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
    assigned_to: assigned?.account ?? null,
    assigned_name: assigned === undefined ? null : columnText(assigned.name),
  };
}
