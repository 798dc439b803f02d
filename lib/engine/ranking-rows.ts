import type { PlaceRecord } from "../knowledge/schema/compiled.ts";
import type { Grounded } from "./ground.ts";
import type { Bounds, RankedSuspect, Weighed } from "./weigh.ts";

/** One line of the ranking: a suspect, or the same fault at places that the answers do not tell apart. */
export interface RankingRow {
  /** `fault@place`; for several places the narrowest place that holds them all. */
  readonly id: string;
  readonly suspects: readonly RankedSuspect[];
  readonly fault: string;
  readonly part: string;
  /** "front left", or "front left or right" when the side is open. */
  readonly place: string;
  /** Chance that at least one of them explains the complaint. */
  readonly explains: number;
  /** Chance that at least one of them is there. */
  readonly present: number;
  /** Only when links were cut: proven bounds of the chance that at least one of them is there. */
  readonly presentBounds?: Bounds | undefined;
  readonly proven: boolean;
}

/** Chance of two suspects together, by the id of the one and then the other. */
type Together = Map<string, Map<string, number>>;

/** Places count as not told apart while none is this many times likelier than another. */
const TOLD_APART = 1.25;

/**
 * The ranking as people read it: one fault on the left and on the right is one line as long as nothing tells the sides
 * apart, so that an open side does not push other causes down the list.
 *
 * The chance of a joint line is the sum of its suspects less what they explain together.
 */
export function rankingRows(grounded: Grounded, weighed: Weighed): RankingRow[] {
  const byFault = new Map<string, RankedSuspect[]>();
  for (const ranked of weighed.ranking) {
    const same = byFault.get(ranked.suspect.fault);
    if (same === undefined) byFault.set(ranked.suspect.fault, [ranked]);
    else same.push(ranked);
  }
  const together: Together = new Map();
  for (const { suspects, probability } of weighed.sets) {
    const [first, second] = suspects;
    if (first === undefined || second === undefined) continue;
    const others = together.get(first) ?? new Map<string, number>();
    together.set(first, others.set(second, probability));
  }
  const rows = [...byFault.values()].flatMap((same) =>
    split(same).map((group) => row(grounded, group, together)),
  );
  return rows.sort((a, b) => b.explains - a.explains || (a.id < b.id ? -1 : 1));
}

/** Splits suspects of one fault, likeliest first, wherever one is clearly less likely than the first of its group. */
function split(same: readonly RankedSuspect[]): RankedSuspect[][] {
  const groups: RankedSuspect[][] = [];
  for (const ranked of same) {
    const group = groups.at(-1);
    const first = group?.[0];
    const alike =
      first !== undefined &&
      !first.proven &&
      !ranked.proven &&
      first.explains <= TOLD_APART * ranked.explains;
    if (group !== undefined && alike) group.push(ranked);
    else groups.push([ranked]);
  }
  return groups;
}

function row(grounded: Grounded, group: RankedSuspect[], together: Together): RankingRow {
  const suspects = group.toSorted((a, b) => a.suspect.index - b.suspect.index);
  const [first] = suspects as [RankedSuspect, ...RankedSuspect[]];
  const places = suspects.flatMap((r) => grounded.places.byId.get(r.suspect.place) ?? []);
  let shared = 0;
  for (const a of suspects) {
    const others = together.get(a.suspect.id);
    if (others === undefined) continue;
    for (const b of suspects) shared += others.get(b.suspect.id) ?? 0;
  }
  const sum = suspects.reduce((total, r) => total + r.explains, 0);
  return {
    id: `${first.suspect.fault}@${places.length === 1 ? first.suspect.place : narrowest(grounded, places)}`,
    suspects,
    fault: first.suspect.fault,
    part: first.suspect.part,
    place: placesName(places),
    explains: Math.min(1, Math.max(first.explains, sum - shared)),
    present: 1 - suspects.reduce((none, r) => none * (1 - r.present), 1),
    ...boundsOfAny(suspects),
    proven: first.proven,
  };
}

/** One of several is there at least as surely as each alone, and at most as often as all of them added up. */
function boundsOfAny(suspects: readonly RankedSuspect[]): Pick<RankingRow, "presentBounds"> {
  const bounds = suspects.flatMap((r) => r.presentBounds ?? []);
  if (bounds.length < suspects.length) return {};
  const low = Math.max(...bounds.map((b) => b.low));
  const high = bounds.reduce((sum, b) => sum + b.high, 0);
  return { presentBounds: { low, high: Math.min(1, high) } };
}

function narrowest(grounded: Grounded, places: readonly PlaceRecord[]): string {
  const [first, ...rest] = places;
  const common = (first?.within ?? []).filter((w) => rest.every((p) => p.within.includes(w)));
  const depth = (id: string): number => grounded.places.byId.get(id)?.within.length ?? 0;
  return common.sort((a, b) => depth(b) - depth(a))[0] ?? first?.id ?? "";
}

/** "front left"; "front left or right" for both sides of an axle; "any corner" for more. */
function placesName(places: readonly PlaceRecord[]): string {
  const [first, second] = places;
  if (first === undefined) return "";
  if (second === undefined) return first.name;
  if (places.length === 2 && first.axle === second.axle) return `${first.name} or ${second.side}`;
  if (places.length === 2 && first.side === second.side) return `${first.name} or ${second.name}`;
  return places.every((p) => p.side !== "none") ? "any corner" : places.map((p) => p.name).join(" or ");
}
