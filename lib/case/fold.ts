import { type CaseCar, type Entry, type EntryOf, isKnownEntry, type KnownEntry } from "./entries.ts";
import type { CaseAnswer, CaseState, TimelineItem } from "./case-state.ts";
import { entryLabel } from "./entry-label.ts";
import { orderEntries } from "./order-entries.ts";
import { retractedIds } from "./retracted-ids.ts";

/** The state while it is being folded: maps keep the order in which things last changed. */
interface Draft {
  opening?: EntryOf<"opened">;
  release?: Pick<EntryOf<"opened">, "release" | "knowledgeVersion">;
  car?: CaseCar;
  setUp?: string;
  verdict?: CaseState["verdict"];
  turning?: CaseState["turning"];
  advised?: CaseState["advised"];
  assigned?: CaseState["assigned"];
  readonly fitted: CaseState["fitted"][number][];
  readonly text: string[];
  readonly photos: CaseState["photos"][number][];
  readonly notes: string[];
  readonly answers: Map<string, CaseAnswer>;
  readonly refused: Map<string, { finding: string; words: string }>;
  readonly notPossible: Map<string, { check: string; reason: string }>;
  readonly cautionsRead: Set<string>;
}

/** Sets a key as the newest: a later answer stands where it was given, not where the first one was. */
function setNewest<V>(map: Map<string, V>, key: string, value: V): void {
  map.delete(key);
  map.set(key, value);
}

function answerOf(entry: EntryOf<"answered">): CaseAnswer {
  return {
    finding: entry.finding,
    state: entry.state,
    by: entry.how,
    entry: entry.id,
    ...(entry.level !== undefined && { level: entry.level }),
    ...(entry.value !== undefined && { value: entry.value }),
    ...(entry.circleMm !== undefined && { circleMm: entry.circleMm }),
    ...(entry.words !== undefined && { words: entry.words }),
    ...(entry.check !== undefined && { check: entry.check }),
    ...(entry.from !== undefined && { from: entry.from }),
  };
}

type Steps = { readonly [K in KnownEntry["kind"]]: (draft: Draft, entry: EntryOf<K>) => void };

const STEPS: Steps = {
  opened: (draft, entry) => {
    // A second opening can only be a fault of a device; the first one stands.
    draft.opening ??= entry;
    draft.release ??= entry;
    draft.car ??= entry.car;
  },
  "release-changed": (draft, entry) => {
    draft.release = entry;
  },
  "car-changed": (draft, entry) => {
    draft.car = entry.car;
  },
  told: (draft, entry) => {
    draft.text.push(entry.text);
  },
  answered: (draft, entry) => {
    // What was found by hand stands, whatever the customer's form says later.
    if (entry.from !== undefined && draft.answers.get(entry.finding)?.by === "check") return;
    setNewest(draft.answers, entry.finding, answerOf(entry));
    // What was done after all was possible.
    if (entry.check !== undefined) draft.notPossible.delete(entry.check);
  },
  photo: (draft, { id, photo, width, height, caption, from }) => {
    draft.photos.push({
      entry: id,
      photo,
      width,
      height,
      ...(caption !== undefined && { caption }),
      ...(from !== undefined && { from }),
    });
  },
  refused: (draft, entry) => {
    const { finding, words } = entry;
    setNewest(draft.refused, JSON.stringify([finding, words]), { finding, words });
  },
  "set-up": (draft, entry) => {
    draft.setUp = entry.setUp;
  },
  "not-possible": (draft, entry) => {
    setNewest(draft.notPossible, entry.check, { check: entry.check, reason: entry.reason });
  },
  "cautions-read": (draft, entry) => {
    draft.cautionsRead.add(entry.check);
  },
  fitted: (draft, { id, part, place, atKm, yearsAgo }) => {
    // Without an age it says nothing.
    if (atKm === undefined && yearsAgo === undefined) return;
    draft.fitted.push({
      entry: id,
      part,
      ...(place !== undefined && { place }),
      ...(atKm !== undefined && { atKm }),
      ...(yearsAgo !== undefined && { yearsAgo }),
    });
  },
  turning: (draft, { tyre, circumferenceMm, finalDrive, cylinders, measured }) => {
    draft.turning = {
      measured,
      ...(tyre !== undefined && { tyre }),
      ...(circumferenceMm !== undefined && { circumferenceMm }),
      ...(finalDrive !== undefined && { finalDrive }),
      ...(cylinders !== undefined && { cylinders }),
    };
  },
  note: (draft, entry) => {
    draft.notes.push(entry.text);
  },
  verdict: (draft, { suspects, proof, note, at, by }) => {
    draft.verdict = { suspects, proof, at, by, ...(note !== undefined && { note }) };
  },
  advised: (draft, { level, said, p50, p90, parts, note, at, by }) => {
    draft.advised = {
      level,
      said,
      parts,
      at,
      by,
      ...(p50 !== undefined && { p50 }),
      ...(p90 !== undefined && { p90 }),
      ...(note !== undefined && { note }),
    };
  },
  assigned: (draft, { to, account }) => {
    if (to === undefined) delete draft.assigned;
    else draft.assigned = { name: to, ...(account !== undefined && { account }) };
  },
  reopened: (draft) => {
    delete draft.verdict;
  },
  retracted: () => undefined, // done beforehand by retractedIds
};

function step(draft: Draft, entry: KnownEntry): void {
  const apply = STEPS[entry.kind] as (draft: Draft, entry: KnownEntry) => void;
  apply(draft, entry);
}

/**
 * The state of a case from its entries, in whatever order and however often they were delivered.
 *
 * Shape   entries: any order, duplicates allowed; not modified.
 * Errors  none on entries that follow their schema; entries of an unknown kind or another case stay without effect.
 */
export function foldCase(entries: Iterable<Entry>): CaseState {
  const ordered = orderEntries(entries);
  const caseId = (ordered.find((entry) => entry.kind === "opened") ?? ordered[0])?.caseId ?? "";
  const own = ordered.filter((entry) => entry.caseId === caseId);
  const retracted = retractedIds(own);
  const draft: Draft = {
    text: [],
    photos: [],
    fitted: [],
    notes: [],
    answers: new Map(),
    refused: new Map(),
    notPossible: new Map(),
    cautionsRead: new Set(),
  };
  // The opening comes first even when the device that made it ran fast.
  const opening = own.find((entry) => entry.kind === "opened");
  if (opening !== undefined && isKnownEntry(opening)) step(draft, opening);
  for (const entry of own) {
    if (entry !== opening && isKnownEntry(entry) && !retracted.has(entry.id)) step(draft, entry);
  }
  return finish(draft, caseId, timelineOf(ordered, caseId, retracted));
}

function timelineOf(
  ordered: readonly Entry[],
  caseId: string,
  retracted: ReadonlySet<string>,
): TimelineItem[] {
  return ordered.map((entry) => ({
    entry,
    retracted: entry.caseId === caseId && retracted.has(entry.id),
    ignored: entry.caseId !== caseId || !isKnownEntry(entry),
    label: entryLabel(entry),
  }));
}

function finish(draft: Draft, caseId: string, timeline: TimelineItem[]): CaseState {
  const { opening, release } = draft;
  return {
    caseId,
    opened: opening !== undefined,
    ...(opening !== undefined && { openedAt: opening.at }),
    release: release?.release ?? "",
    ...(release?.knowledgeVersion !== undefined && { knowledgeVersion: release.knowledgeVersion }),
    car: draft.car ?? {},
    customer: opening?.customer ?? "",
    vehicle: opening?.vehicle ?? "",
    ...(opening?.plate !== undefined && { plate: opening.plate }),
    invented: opening?.invented ?? false,
    text: draft.text,
    photos: draft.photos,
    answers: [...draft.answers.values()],
    refused: [...draft.refused.values()],
    ...(draft.setUp !== undefined && { setUp: draft.setUp }),
    notPossible: [...draft.notPossible.values()],
    cautionsRead: [...draft.cautionsRead],
    fitted: draft.fitted,
    ...(draft.turning !== undefined && { turning: draft.turning }),
    notes: draft.notes,
    ...(draft.verdict !== undefined && { verdict: draft.verdict }),
    ...(draft.advised !== undefined && { advised: draft.advised }),
    ...(draft.assigned !== undefined && { assigned: draft.assigned }),
    timeline,
  };
}
