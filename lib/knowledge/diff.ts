import { canonicalJson } from "./canonical.ts";
import type { Knowledge } from "./schema/compiled.ts";
import { logOdds } from "../maths/log-odds.ts";
import { weightsOf } from "./weights.ts";

/** Lists of records in the compiled knowledge. */
export const RECORD_KINDS = [
  "parts",
  "faults",
  "complaints",
  "features",
  "observations",
  "contexts",
  "checks",
  "cautions",
  "sources",
  "layouts",
  "demoCases",
] as const;

const WHOLE_FILES = [
  "scale",
  "places",
  "car",
  "setUps",
  "reports",
  "groups",
  "words",
  "costs",
  "orders",
  "limits",
  "publishedShares",
  "doubt",
  "advice",
  "lay",
] as const;

/** Ids that came, changed and went, each list sorted. */
export interface RecordChanges {
  readonly added: readonly string[];
  readonly changed: readonly string[];
  readonly retired: readonly string[];
}

/** One probability that moved. */
export interface WeightChange {
  /** What it is, such as "faults/damper-leaking links.oil-on-damper.0". */
  readonly weight: string;
  readonly from: number;
  readonly to: number;
  /** Natural log-odds of `to` less that of `from`. */
  readonly logOddsDelta: number;
}

/** What differs between two versions of the knowledge. */
export interface KnowledgeDiff {
  readonly from: string;
  readonly to: string;
  readonly records: Readonly<Record<(typeof RECORD_KINDS)[number], RecordChanges>>;
  /** Fields that are one file each (scale, places ...) and differ. */
  readonly files: readonly string[];
  /** Probabilities that are on both sides and moved, most moved first. */
  readonly weights: readonly WeightChange[];
}

/**
 * What differs from one version of the knowledge to another: ids by kind, and every probability that moved.
 *
 * `priors` gives each fault's chance on a typical car (fault id -> probability), where the caller can work it out; a changed
 * wear life then shows as the change of that chance too.
 */
export function diffKnowledge(
  a: Knowledge,
  b: Knowledge,
  priors: (knowledge: Knowledge) => ReadonlyMap<string, number> = () => new Map(),
): KnowledgeDiff {
  const records = Object.fromEntries(
    RECORD_KINDS.map((kind) => [kind, changesOf(a[kind], b[kind])]),
  ) as unknown as KnowledgeDiff["records"];
  // Older releases lack a file that came later.
  const text = (file: unknown) => (file === undefined ? "" : canonicalJson(file));
  const files = WHOLE_FILES.filter((name) => text(a[name]) !== text(b[name]));
  return { from: a.version, to: b.version, records, files, weights: movedWeights(a, b, priors) };
}

/** Whether two versions hold the same, whatever their version numbers. */
export function isEmptyDiff(diff: KnowledgeDiff): boolean {
  const quiet = Object.values(diff.records).every(
    ({ added, changed, retired }) => added.length + changed.length + retired.length === 0,
  );
  return quiet && diff.files.length === 0 && diff.weights.length === 0;
}

function changesOf(a: readonly { id: string }[], b: readonly { id: string }[]): RecordChanges {
  const before = new Map(a.map((record) => [record.id, canonicalJson(record)]));
  const after = new Map(b.map((record) => [record.id, canonicalJson(record)]));
  const pick = (ids: Iterable<string>, keep: (id: string) => boolean) => [...ids].filter(keep).sort();
  return {
    added: pick(after.keys(), (id) => !before.has(id)),
    changed: pick(after.keys(), (id) => before.has(id) && before.get(id) !== after.get(id)),
    retired: pick(before.keys(), (id) => !after.has(id)),
  };
}

function movedWeights(
  a: Knowledge,
  b: Knowledge,
  priors: (knowledge: Knowledge) => ReadonlyMap<string, number>,
): WeightChange[] {
  const all = (knowledge: Knowledge) => {
    const weights = weightsOf(knowledge);
    for (const [fault, prior] of priors(knowledge)) {
      weights.set(`faults/${fault} prior`, { value: prior, logOdds: logOdds(prior) });
    }
    return weights;
  };
  const before = all(a);
  const moved: WeightChange[] = [];
  for (const [weight, after] of all(b)) {
    const earlier = before.get(weight);
    if (earlier === undefined || earlier.value === after.value) continue;
    const logOddsDelta = after.logOdds - earlier.logOdds;
    moved.push({ weight, from: earlier.value, to: after.value, logOddsDelta });
  }
  return moved.sort((x, y) => Math.abs(y.logOddsDelta) - Math.abs(x.logOddsDelta));
}
