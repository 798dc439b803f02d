import { readCar } from "../car/car.ts";
import { CornerwiseError } from "../errors.ts";
import type { CompiledFault, Knowledge, SourceRecord } from "../knowledge/schema/compiled.ts";
import type {
  PublishedShares,
  ShareFleet,
  ShareGroup,
  ShareRow,
} from "../knowledge/schema/published-shares.ts";
import { alongLine } from "../maths/along-line.ts";
import { indexPlaces, type PlaceIndex } from "./place-index.ts";
import { type Prior, suspectPriors } from "./priors.ts";

/** One published figure beside what the model expects of the same cars before any finding. */
export interface ShareLine {
  readonly id: string;
  readonly group: string;
  /** What the figure's heading covers. */
  readonly name: string;
  readonly size: "large" | "small";
  readonly fleet: string;
  /** Undefined: over all ages of the fleet. */
  readonly age: number | undefined;
  readonly year: number;
  readonly base: ShareRow["base"];
  /** Set when both figures are ratios to another group or age. */
  readonly against: { readonly name: string; readonly age: number | undefined } | undefined;
  readonly published: number;
  readonly model: number;
  /** Model over published. For an order neither is a share of cars, and only the order counts. */
  readonly ratio: number;
  readonly note: string | undefined;
  readonly source: SourceRecord | undefined;
}

/**
 * Every published share of the knowledge beside the share that its priors expect of such cars.
 *
 * A fault at a place counts by its prior times the chance that an inspection fails it. "At least one" takes suspects as
 * independent, as the model does.
 *
 * Shape: one line a row of `published-shares.json`, in its order; none for a release without the file.
 * Errors: `bad-request` when a fleet's car has a value that no car has, `unknown-id` for a group or fleet that is not there.
 */
export function publishedShares(knowledge: Knowledge): ShareLine[] {
  const { publishedShares: shares } = knowledge;
  if (shares === undefined) return [];
  const groups = new Map(shares.groups.map((group) => [group.id, group]));
  const sources = new Map(knowledge.sources.map((source) => [source.id, source]));
  const expect = expectations(knowledge, shares);
  const raw = shares.rows.map((row) => expect(row, groupOf(row.group), row.age));
  return shares.rows.map((row, i) => {
    const group = groupOf(row.group);
    const other = row.against;
    const otherGroup = groupOf(other?.group ?? row.group);
    const otherAge = other?.age ?? row.age;
    let published = row.share;
    let model = raw[i] ?? 0;
    if (other !== undefined) {
      published /= other.share;
      model /= expect(row, otherGroup, otherAge);
    } else if (row.base === "order") {
      // Votes: the model's are scaled to as many.
      const rivals = shares.rows.map((r, k) => ({ r, m: raw[k] ?? 0 })).filter(({ r }) => isRival(r, row));
      const votes = rivals.reduce((sum, { r }) => sum + r.share, 0);
      model *= votes / rivals.reduce((sum, { m }) => sum + m, 0);
    }
    return {
      id: row.id,
      group: row.group,
      name: group.name,
      size: group.size,
      fleet: row.fleet,
      age: row.age,
      year: row.year,
      base: row.base,
      against: other && { name: otherGroup.name, age: otherAge },
      published,
      model,
      ratio: model / published,
      note: row.note,
      source: sources.get(row.basis),
    };
  });

  function groupOf(id: string): ShareGroup {
    const group = groups.get(id);
    if (group === undefined) throw unknown("group", id);
    return group;
  }
}

function unknown(what: string, id: string): CornerwiseError {
  return new CornerwiseError(
    "unknown-id",
    `published-shares.json: there is no ${what} "${id}"; name one that the file lists.`,
    { id },
  );
}

/** What the priors expect inspections to find of one group at each of some ages. */
export interface GroupByAge {
  readonly group: string;
  readonly name: string;
  /** Share of inspections with at least one major or dangerous defect of the group, in the order of the ages. */
  readonly shares: readonly number[];
}

/**
 * Share of inspections that the priors expect to fail for each group of `published-shares.json`, by age.
 *
 * Units: years.
 * Errors: `unknown-id` for a fleet that the file does not list.
 */
export function sharesByAge(knowledge: Knowledge, fleet: string, ages: readonly number[]): GroupByAge[] {
  const { publishedShares: shares } = knowledge;
  if (shares === undefined) return [];
  const expect = expectations(knowledge, shares);
  return shares.groups.map((group) => ({
    group: group.id,
    name: group.name,
    shares: ages.map((age) => expect({ fleet, base: "tests", words: ["major", "dangerous"] }, group, age)),
  }));
}

function isRival(a: ShareRow, b: ShareRow): boolean {
  return a.base === b.base && a.fleet === b.fleet && a.age === b.age;
}

/** What the model expects of a row's cars, for a group and an age that may be another than the row's. */
function expectations(
  knowledge: Knowledge,
  shares: PublishedShares,
): (row: Pick<ShareRow, "fleet" | "base" | "words">, group: ShareGroup, age: number | undefined) => number {
  const places = indexPlaces(knowledge);
  const faults = new Map(knowledge.faults.map((fault) => [fault.id, fault]));
  const priorsAt = new Map<string, readonly Prior[]>();
  const priorsOf = (fleet: ShareFleet, years: number): readonly Prior[] => {
    const key = `${fleet.id} ${years}`;
    const kept = priorsAt.get(key);
    if (kept !== undefined) return kept;
    const km = kmAt(fleet, years) ?? years * knowledge.car.kmPerYear.value;
    const { car } = readCar(knowledge, { ...fleet.car, ageYears: years, odometerKm: km });
    const priors = suspectPriors(knowledge, car, [], places);
    priorsAt.set(key, priors);
    return priors;
  };

  return (row, group, age) => {
    const fleet = shares.fleets.find(({ id }) => id === row.fleet);
    if (fleet === undefined) throw unknown("fleet", row.fleet);
    const ages = age === undefined ? fleet.ages : [{ years: age, weight: 1 }];
    const weights = ages.reduce((sum, { weight }) => sum + weight, 0);
    return ages.reduce((sum, { years, weight }) => {
      let count = 0;
      let none = 1;
      for (const { fault: id, place, prior } of priorsOf(fleet, years)) {
        const fault = faults.get(id);
        if (fault === undefined || !row.words.includes(fault.severity.word)) continue;
        if (!covers(group, fault, place, places)) continue;
        const chance = prior * (row.base === "cars" ? 1 : foundChance(shares, fault));
        count += chance;
        none *= 1 - chance;
      }
      return sum + ((row.base === "tests" || row.base === "cars" ? 1 - none : count) * weight) / weights;
    }, 0);
  };
}

/** Mean km of the fleet at an age; undefined when the fleet has no figures. */
function kmAt(fleet: ShareFleet, years: number): number | undefined {
  const points = fleet.kmAt?.map((p) => ({ at: p.years, value: p.km }));
  return points && alongLine([{ at: 0, value: 0 }, ...points], years);
}

function covers(group: ShareGroup, fault: CompiledFault, place: string, places: PlaceIndex): boolean {
  if (group.exceptParts.includes(fault.part)) return false;
  if (group.kinds !== undefined && !group.kinds.includes(fault.kind)) return false;
  if (group.axle !== undefined && places.byId.get(place)?.axle !== group.axle) return false;
  const item = fault.severity.item?.split(" ")[0];
  return (
    group.parts.includes(fault.part) ||
    group.items.some((begin) => item === begin || item?.startsWith(`${begin}.`) === true)
  );
}

function foundChance(shares: PublishedShares, fault: CompiledFault): number {
  const rule = shares.found.find(
    ({ faults, kinds, words }) =>
      (faults === undefined || faults.includes(fault.id)) &&
      (kinds === undefined || kinds.includes(fault.kind)) &&
      (words === undefined || words.includes(fault.severity.word)),
  );
  return rule?.chance ?? 1;
}
