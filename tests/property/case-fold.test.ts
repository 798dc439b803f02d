import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Entry,
  type EntryOf,
  exportCase,
  foldCase,
  importCase,
  mergeEntries,
  parseEntry,
} from "../../lib/case/index.ts";
import { anyEntries, delivered, plainEntries } from "../support/entry-arbitraries.ts";

const RUNS = { seed: 20261125, numRuns: 1000 };

/** The definition, word for word and slowly: retracted when some retraction that is not retracted names it. */
function isRetracted(entries: readonly Entry[], id: string): boolean {
  return entries.some(
    (e) => e.kind === "retracted" && (e as EntryOf<"retracted">).entry === id && !isRetracted(entries, e.id),
  );
}

const later = (a: Entry, b: Entry): boolean => a.at > b.at || (a.at === b.at && a.id > b.id);

describe("the fold of a case", () => {
  it("generates what it claims to: duplicates of ids, retractions, unknown kinds", () => {
    const lists = fc.sample(anyEntries, RUNS);
    const share = (has: (list: Entry[]) => boolean): number => lists.filter(has).length / lists.length;
    expect(share((l) => new Set(l.map((e) => e.id)).size < l.length)).toBeGreaterThan(0.3);
    expect(share((l) => l.some((e) => e.kind === "retracted"))).toBeGreaterThan(0.2);
    expect(share((l) => l.some((e) => e.kind === "hologram"))).toBeGreaterThan(0.2);
    expect(lists.flat().every((e) => parseEntry(e).id === e.id)).toBe(true);
  });

  it("gives one state whatever the order, repetition and grouping of deliveries", () => {
    fc.assert(
      fc.property(
        anyEntries.chain((list) => fc.tuple(fc.constant(list), delivered(list), delivered(list))),
        ([list, one, other]) => {
          const state = foldCase(list);
          expect(foldCase(one)).toEqual(state);
          expect(foldCase(mergeEntries(one, other))).toEqual(state);
          expect(foldCase(mergeEntries(mergeEntries(one.slice(0, 5)), mergeEntries(other)))).toEqual(state);
        },
      ),
      RUNS,
    );
  });

  it("keeps the timeline in the order of time and then id, each id once", () => {
    fc.assert(
      fc.property(anyEntries, (list) => {
        const { timeline } = foldCase(list);
        expect(timeline.length).toBe(new Set(list.map((e) => e.id)).size);
        for (let i = 1; i < timeline.length; i++) {
          expect(later(timeline[i]!.entry, timeline[i - 1]!.entry)).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it("takes the latest answer that is not retracted, and marks as retracted what the definition says", () => {
    fc.assert(
      fc.property(plainEntries, (list) => {
        const state = foldCase(list);
        for (const { entry, retracted } of state.timeline) {
          if (entry.kind !== "opened") expect(retracted).toBe(isRetracted(list, entry.id));
        }
        const wanted = new Map<string, EntryOf<"answered">>();
        for (const entry of list) {
          if (entry.kind !== "answered" || isRetracted(list, entry.id)) continue;
          const answered = entry as EntryOf<"answered">;
          const held = wanted.get(answered.finding);
          if (held === undefined || later(answered, held)) wanted.set(answered.finding, answered);
        }
        expect(new Map(state.answers.map((a) => [a.finding, [a.state, a.entry]]))).toEqual(
          new Map([...wanted].map(([finding, e]) => [finding, [e.state, e.id]])),
        );
      }),
      RUNS,
    );
  });

  it("comes back to the same state after an entry is retracted and the retraction is retracted", () => {
    const mark = (id: string, entry: string, at: string): Entry => ({
      id,
      caseId: "case-1",
      at,
      by: "ana",
      kind: "retracted",
      entry,
    });
    const effects = (entries: Entry[]): unknown => {
      const { timeline, ...state } = foldCase(entries);
      return [
        state,
        timeline.filter((item) => !item.entry.id.startsWith("r-")).map((item) => item.retracted),
      ];
    };
    fc.assert(
      fc.property(plainEntries, fc.nat(), (list, pick) => {
        const target = list[pick % list.length];
        fc.pre(target !== undefined);
        const undo = mark("r-undo", target.id, "2026-03-02T00:00:00.000Z");
        const redo = mark("r-redo", "r-undo", "2026-03-02T00:00:01.000Z");
        expect(effects([...list, undo, redo])).toEqual(effects(list));
        const without = foldCase([...list, undo]).timeline.find((item) => item.entry.id === target.id);
        expect(without?.retracted).toBe(target.kind !== "opened");
      }),
      RUNS,
    );
  });

  it("has merges that commute, associate and repeat without effect", () => {
    fc.assert(
      fc.property(anyEntries, anyEntries, anyEntries, (a, b, c) => {
        const all = mergeEntries(a, b, c);
        expect(mergeEntries(c, a, b)).toEqual(all);
        expect(mergeEntries(mergeEntries(a, b), c)).toEqual(all);
        expect(mergeEntries(a, mergeEntries(b, c))).toEqual(all);
        expect(mergeEntries(all, all)).toEqual(all);
      }),
      RUNS,
    );
  });

  it("goes through a case file unchanged, with kinds and fields of newer versions kept", () => {
    fc.assert(
      fc.property(anyEntries, (list) => {
        fc.pre(list.length > 0);
        const grown = list.map((entry) => ({ ...entry, addedLater: { deep: [1, "two"] } }));
        const back = importCase(exportCase(grown));
        expect(back.entries).toEqual(mergeEntries(grown));
        expect(foldCase(back.entries)).toEqual(foldCase(grown));
      }),
      RUNS,
    );
  });
});
