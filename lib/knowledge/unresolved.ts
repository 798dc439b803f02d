import { CornerwiseError } from "../errors.ts";
import { checkLogic } from "./logic.ts";
import type { KnowledgeProblem } from "./problems.ts";
import { type ReferenceKind, referencesOf } from "./references.ts";
import type { Authored } from "./schema/authored.ts";

type Ended = { readonly id: string; readonly ended?: { since: string; instead: string[] } | undefined };

/** Ids of each kind that a live record may name, and the ended ones with what took their place. */
interface Known {
  readonly live: ReadonlyMap<ReferenceKind, ReadonlySet<string>>;
  readonly ended: ReadonlyMap<ReferenceKind, ReadonlyMap<string, Ended>>;
}

/** Every naming of something that is not there, or that has ended; ended records may name what they like, save in `instead`. */
export function unresolvedReferences(authored: Authored): (KnowledgeProblem & { kind: ReferenceKind })[] {
  const known = knownIds(authored);
  const endedFiles = new Set(endedRecords(authored).map(([folder, record]) => `${folder}/${record.id}.json`));
  const problems: (KnowledgeProblem & { kind: ReferenceKind })[] = [];
  for (const { file, path, kind, id } of referencesOf(authored)) {
    if (endedFiles.has(file) || known.live.get(kind)?.has(id)) continue;
    const ended = known.ended.get(kind)?.get(id)?.ended;
    const instead = ended?.instead.map((other) => `"${other}"`).join(" or ") || "a live one";
    problems.push(
      ended === undefined
        ? { file, path, kind, what: `there is no ${kind} "${id}"`, mend: mendFor(kind) }
        : { file, path, kind, what: `the ${kind} "${id}" ended in ${ended.since}`, mend: `Name ${instead}.` },
    );
  }
  return problems;
}

/** Ended records whose `instead` does not lead to a live record of the same kind. */
export function endedProblems(authored: Authored): KnowledgeProblem[] {
  const problems: KnowledgeProblem[] = [];
  for (const [folder, record, siblings] of endedRecords(authored)) {
    for (const id of record.ended?.instead ?? []) {
      if (endsAlive(id, siblings)) continue;
      problems.push({
        file: `${folder}/${record.id}.json`,
        path: "ended.instead",
        what: `"${id}" is not there, or leads round in a circle, or to nothing that is in use`,
        mend: `Name a record of ${folder} that is in use, or leave the list empty.`,
      });
    }
  }
  return problems;
}

function endsAlive(id: string, siblings: ReadonlyMap<string, Ended>, seen: readonly string[] = []): boolean {
  const record = siblings.get(id);
  if (record === undefined || seen.includes(id)) return false;
  if (record.ended === undefined) return true;
  return record.ended.instead.some((next) => endsAlive(next, siblings, [...seen, id]));
}

/** Every JsonLogic rule of the knowledge that may not be used, or reads something that a car has not. */
export function logicProblems(authored: Authored): KnowledgeProblem[] {
  const paths = new Set([
    "place.id",
    "place.axle",
    "place.side",
    ...authored.car.attributes.map((a) => a.path),
  ]);
  const problems: KnowledgeProblem[] = [];
  for (const { file, path, rule } of logicOf(authored)) {
    try {
      for (const read of checkLogic(rule)) {
        if (paths.has(read)) continue;
        const mend = `Use one of: ${[...paths].join(", ")}.`;
        problems.push({ file, path, what: `a car has no "${read}"`, mend });
      }
    } catch (error) {
      if (!(error instanceof CornerwiseError)) throw error;
      problems.push({ file, path, what: error.message, mend: "See lib/knowledge/logic.ts." });
    }
  }
  return problems;
}

/** Every JsonLogic rule of the knowledge with where it stands. */
export function logicOf(authored: Authored): { file: string; path: string; rule: unknown }[] {
  const rules: { file: string; path: string; rule: unknown }[] = [];
  const add = (file: string, path: string, rule: unknown) => {
    if (rule !== undefined) rules.push({ file, path, rule });
  };
  for (const part of authored.parts) add(`parts/${part.id}.json`, "when", part.when);
  for (const fault of authored.faults) {
    add(`faults/${fault.id}.json`, "when", fault.when);
    fault.modifiers.forEach((modifier, i) => {
      add(`faults/${fault.id}.json`, `modifiers.${i}.when`, modifier.when);
    });
  }
  for (const observation of authored.observations) {
    add(`observations/${observation.id}.json`, "when", observation.when);
  }
  for (const check of authored.checks) add(`checks/${check.id}.json`, "when", check.when);
  authored.orders.shafts.forEach((shaft, i) => {
    add("orders.json", `shafts.${i}.when`, shaft.when);
  });
  authored.limits.limits.forEach((limit, i) => {
    add("limits.json", `limits.${i}.when`, limit.when);
  });
  return rules;
}

const ENDING_FOLDERS = ["parts", "faults", "complaints", "features", "observations", "checks"] as const;

function endedRecords(authored: Authored): [string, Ended, ReadonlyMap<string, Ended>][] {
  return ENDING_FOLDERS.flatMap((folder) => {
    const records: readonly Ended[] = authored[folder];
    const siblings = new Map(records.map((record) => [record.id, record]));
    return records
      .filter((record) => record.ended !== undefined)
      .map((record): [string, Ended, ReadonlyMap<string, Ended>] => [folder, record, siblings]);
  });
}

function knownIds(authored: Authored): Known {
  const live = new Map<ReferenceKind, Set<string>>();
  const ended = new Map<ReferenceKind, Map<string, Ended>>();
  const add = (kind: ReferenceKind, records: readonly Ended[]) => {
    live.set(kind, new Set(records.filter((r) => r.ended === undefined).map((r) => r.id)));
    ended.set(kind, new Map(records.filter((r) => r.ended !== undefined).map((r) => [r.id, r])));
  };
  add("part", authored.parts);
  add("fault", authored.faults);
  add("complaint", authored.complaints);
  add("feature", authored.features);
  add("feature or relative key", authored.features);
  add("observation", authored.observations);
  add("context", authored.contexts);
  add("profile", authored.profiles);
  add("check", authored.checks);
  add("caution", authored.cautions);
  add("source", authored.sources);
  add("place", authored.places.places);
  add("set-up", authored.setUps.setUps);
  add("feature group", authored.groups.groups);
  live.set("place set", new Set(Object.keys(authored.places.sets)));
  live.set("frequency word", new Set(Object.keys(authored.scale.words)));
  live.set("price band", new Set(Object.keys(authored.costs.bands)));
  live.set("share group", new Set(authored.publishedShares.groups.map((g) => g.id)));
  live.set("share fleet", new Set(authored.publishedShares.fleets.map((f) => f.id)));
  live.set("picture", new Set(authored.lay.pictures.map((p) => p.id)));
  for (const feature of authored.features) {
    for (const key of Object.values(feature.relative ?? {})) {
      if (feature.ended === undefined && key !== undefined) live.get("feature or relative key")?.add(key);
    }
  }
  return { live, ended };
}

function mendFor(kind: ReferenceKind): string {
  switch (kind) {
    case "place":
    case "place set":
      return "Use one of places.json.";
    case "set-up":
      return "Use one of set-ups.json.";
    case "feature group":
      return "Use one of groups.json.";
    case "price band":
      return "Use one of the bands of costs.json.";
    case "share group":
    case "share fleet":
      return "Use one of published-shares.json.";
    case "picture":
      return "Use one of the pictures of lay.json.";
    case "frequency word":
      return "Use a word of scale.json or a number between 0 and 1.";
    case "feature or relative key":
      return "Use the id of a feature, or a key that a feature's `relative` names.";
    default:
      return `Add the ${kind}, or mend the id.`;
  }
}
