import { urgencyRank } from "../../../lib/case/case-urgency.ts";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { KnownUrgency } from "../../engine/use-device-urgency.ts";
import type { CaseInList } from "../../store/use-cases.ts";
import type { CaseHead } from "../../sync/replies.ts";
import type { Myself, Wanted } from "./wanted.ts";

export const NOT_WORKED_OUT: KnownUrgency = { urgency: undefined, busy: true, problem: undefined };

/** A case in the list, wherever it is kept. */
export interface OverviewRow extends KnownUrgency {
  readonly id: string;
  readonly vehicle: string;
  readonly plate: string;
  readonly customer: string;
  readonly invented: boolean;
  readonly closed: boolean;
  readonly openedAt: string;
  readonly changedAt: string;
  readonly assigned: { readonly name: string; readonly account: string | undefined } | undefined;
  /** The same case on this device. */
  readonly here: CaseInList | undefined;
}

export function rowOfHead(head: CaseHead, here: CaseInList | undefined): OverviewRow {
  const { id, vehicle, customer, invented, closed, openedAt, changedAt, assigned, urgency: given } = head;
  return {
    ...{ id, vehicle, customer, invented, closed, openedAt, changedAt, here },
    plate: head.plate ?? "",
    assigned: assigned ? { name: assigned.name, account: assigned.account ?? undefined } : undefined,
    urgency:
      given?.is === "level"
        ? { is: "level", level: given.level ?? "", danger: 0 }
        : given?.is === "nothing-told"
          ? { is: "nothing-told" }
          : undefined,
    busy: !closed && given?.current === false,
    problem: given?.problem ?? undefined,
  };
}

export function rowOfDevice(here: CaseInList, known: KnownUrgency): OverviewRow {
  const { vehicle, plate = "", customer, invented, verdict, openedAt = here.lastAt, assigned } = here.state;
  return {
    ...known,
    ...{ id: here.id, vehicle, plate, customer, invented, openedAt, here },
    closed: verdict !== undefined,
    changedAt: here.lastAt,
    assigned: assigned && { name: assigned.name, account: assigned.account },
  };
}

/** Whether what this device holds of a case is all there is, or newer than what the server has. */
const isAhead = ({ serverVersion, waiting, stuck }: CaseInList): boolean =>
  serverVersion === undefined || waiting > 0 || stuck;

const levelOf = ({ urgency }: OverviewRow): string =>
  urgency === undefined ? "unknown" : urgency.is === "level" ? urgency.level : "nothing-told";

/** Whether a case is one of those wanted; its words are looked for in `searched`. */
export function isWanted(row: OverviewRow, wanted: Wanted, me: Myself, searched: string): boolean {
  if (wanted.state !== "all" && row.closed !== (wanted.state === "closed")) return false;
  if (wanted.levels.length > 0 && (row.closed || !wanted.levels.includes(levelOf(row)))) return false;
  if (wanted.invented !== "shown" && row.invented !== (wanted.invented === "only")) return false;
  if (wanted.who !== "" && !isWith(row, wanted.who, me)) return false;
  const line = searched.toLowerCase();
  return wanted.text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => line.includes(word));
}

function isWith({ assigned }: OverviewRow, who: string, me: Myself): boolean {
  if (who === "nobody") return assigned === undefined;
  if (assigned === undefined) return false;
  if (who === "me" && me.account !== undefined) return assigned.account === me.account;
  const name = who === "me" ? `name:${me.name}` : who;
  return name === `name:${assigned.name}` || name === `account:${assigned.account ?? ""}`;
}

type Key = readonly (string | number)[];

/** The columns that the server's order goes by. */
function keyOf(row: OverviewRow, sort: Wanted["sort"], levels: Advice["levels"]): Key {
  const { id, closed, openedAt, changedAt } = row;
  if (sort === "changed") return [changedAt, id];
  const rank = sort === "urgent" ? [urgencyRank(row.urgency, levels)] : [];
  return [closed ? 1 : 0, ...rank, openedAt, id];
}

function compare(a: Key, b: Key): number {
  for (const [n, x] of a.entries()) {
    const y = b[n];
    if (y !== undefined && x !== y) return x < y ? -1 : 1;
  }
  return 0;
}

export interface Found {
  readonly wanted: Wanted;
  readonly me: Myself;
  readonly levels: Advice["levels"];
  /** In the server's order; undefined when the server does not answer, then this device's cases stand alone. */
  readonly heads: readonly CaseHead[] | undefined;
  /** The server has more of them than these. */
  readonly more: boolean;
  readonly device: readonly CaseInList[];
  /** Urgency by case, as this device has worked it out. */
  readonly known: ReadonlyMap<string, KnownUrgency>;
  /** What of a case is searched. */
  readonly searched: (item: CaseInList) => string;
}

/**
 * The cases of the server and of this device as one list. A case that both have is shown as the server has it, unless this device is
 * ahead. While the server has more, cases of this device that would come behind are left for later.
 */
export function overviewRows(found: Found): OverviewRow[] {
  const { wanted, me, levels, heads, more, device, known } = found;
  const direction = wanted.sort === "changed" ? -1 : 1;
  const inOrder = (a: OverviewRow, b: OverviewRow): number =>
    direction * compare(keyOf(a, wanted.sort, levels), keyOf(b, wanted.sort, levels));
  const here = new Map(device.map((item) => [item.id, item]));
  const listed = (heads ?? []).flatMap((head) => {
    const item = here.get(head.id);
    return item !== undefined && isAhead(item) ? [] : [rowOfHead(head, item)];
  });
  // A case that moved between two pages came twice.
  const once = new Map(listed.map((row) => [row.id, row]));
  const last = listed.at(-1);
  const own = device.flatMap((item) => {
    // The server does not search what is wrong with a car; this device does.
    if (once.has(item.id) || (heads !== undefined && !isAhead(item) && wanted.text === "")) return [];
    const row = rowOfDevice(item, known.get(item.id) ?? NOT_WORKED_OUT);
    if (!isWanted(row, wanted, me, found.searched(item))) return [];
    return more && last !== undefined && inOrder(row, last) > 0 ? [] : [row];
  });
  return [...once.values(), ...own].sort(inOrder);
}
