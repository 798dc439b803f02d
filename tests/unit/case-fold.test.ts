import { describe, expect, it } from "vitest";
import {
  type CaseState,
  entriesToUndo,
  entryToUndo,
  foldCase,
  type KnownEntry,
  presentContexts,
  retractionToRedo,
} from "../../lib/case/index.ts";
import { jobCardKnowledge } from "../support/job-card-knowledge.ts";

type Body<E> = E extends KnownEntry ? Omit<E, "caseId" | "at" | "by"> & { at?: number; by?: string } : never;

function entries(...bodies: readonly Body<KnownEntry>[]): KnownEntry[] {
  return bodies.map((body, i) => {
    const at = new Date(Date.UTC(2026, 0, 1) + (body.at ?? i) * 1000).toISOString();
    return { by: "ana", ...body, caseId: "c1", at };
  });
}

const open: Body<KnownEntry> = {
  id: "o",
  kind: "opened",
  release: "aaa",
  car: { drive: "front" },
  customer: "Invented Customer",
  vehicle: "invented hatchback",
};
const yes = (id: string, at?: number): Body<KnownEntry> => ({
  id,
  kind: "answered",
  finding: "noise",
  state: "present",
  how: "report",
  ...(at !== undefined && { at }),
});
const no = (id: string, at?: number): Body<KnownEntry> => ({
  id,
  kind: "answered",
  finding: "noise",
  state: "absent",
  how: "check",
  ...(at !== undefined && { at }),
});
const noise = (state: CaseState): string | undefined =>
  state.answers.find((a) => a.finding === "noise")?.state;

describe("the state of a case", () => {
  it("is empty and does not throw without entries or without the opening", () => {
    expect(foldCase([])).toMatchObject({ caseId: "", opened: false, answers: [], timeline: [] });
    const state = foldCase(entries(yes("a")));
    expect(state).toMatchObject({ caseId: "c1", opened: false, release: "", car: {} });
    expect(noise(state)).toBe("present");
  });

  it("holds by the opening even when its clock ran ahead", () => {
    const state = foldCase(
      entries({ ...open, at: 50 }, { id: "c", kind: "car-changed", car: { drive: "rear" }, at: 1 }),
    );
    expect(state.car).toEqual({ drive: "rear" });
    expect(state.opened).toBe(true);
  });

  it("lets the later of two answers win, by time and then by id", () => {
    expect(noise(foldCase(entries(yes("b", 5), no("a", 9))))).toBe("absent");
    expect(noise(foldCase(entries(yes("b", 5), no("a", 5))))).toBe("present");
  });

  it("falls back to the earlier answer when the later is retracted, and forth again", () => {
    const base = [yes("a"), no("b")];
    const undo: Body<KnownEntry> = { id: "r", kind: "retracted", entry: "b" };
    const redo: Body<KnownEntry> = { id: "s", kind: "retracted", entry: "r" };
    expect(noise(foldCase(entries(...base, undo)))).toBe("present");
    expect(noise(foldCase(entries(...base, undo, redo)))).toBe("absent");
  });

  it("retracts whatever the clocks say, waits for what has not arrived, never retracts the opening", () => {
    const early: Body<KnownEntry> = { id: "r", kind: "retracted", entry: "b", at: 0 };
    expect(noise(foldCase(entries(early, yes("a", 1), no("b", 2))))).toBe("present");
    expect(noise(foldCase(entries(early, yes("a", 1))))).toBe("present");
    const state = foldCase(entries(open, { id: "r", kind: "retracted", entry: "o" }));
    expect(state.opened).toBe(true);
    expect(state.timeline[0]?.retracted).toBe(false);
  });

  it("does not hang or overflow on rings and long chains of retractions", () => {
    const ring = entries(
      yes("a"),
      { id: "x", kind: "retracted", entry: "y" },
      { id: "y", kind: "retracted", entry: "x" },
      { id: "z", kind: "retracted", entry: "z" },
    );
    expect(noise(foldCase(ring))).toBe("present");
    // An even number of retractions on top of each other leaves the answer standing, an odd number takes it back.
    const chain = (n: number): KnownEntry[] =>
      entries(
        yes("e0"),
        ...Array.from(
          { length: n },
          (_, i): Body<KnownEntry> => ({
            id: `e${i + 1}`,
            kind: "retracted",
            entry: `e${i}`,
          }),
        ),
      );
    expect(noise(foldCase(chain(20_000)))).toBe("present");
    expect(noise(foldCase(chain(20_001)))).toBeUndefined();
  });

  it("drops a check from the impossible ones once it was done", () => {
    const stuck: Body<KnownEntry> = {
      id: "n",
      kind: "not-possible",
      check: "rock@front-left",
      reason: "no lift",
    };
    const done: Body<KnownEntry> = {
      id: "p",
      kind: "answered",
      finding: "play@front-left",
      state: "absent",
      how: "check",
      check: "rock@front-left",
    };
    expect(foldCase(entries(open, stuck)).notPossible).toEqual([
      { check: "rock@front-left", reason: "no lift" },
    ]);
    expect(foldCase(entries(open, stuck, done)).notPossible).toEqual([]);
  });

  it("opens again after a verdict", () => {
    const verdict: Body<KnownEntry> = {
      id: "v",
      kind: "verdict",
      suspects: ["joint-worn@front-left"],
      proof: [],
    };
    expect(foldCase(entries(open, verdict)).verdict?.suspects).toEqual(["joint-worn@front-left"]);
    expect(foldCase(entries(open, verdict, { id: "w", kind: "reopened" })).verdict).toBeUndefined();
  });

  it("keeps the advice that was decided last, and the one before when that is taken back", () => {
    const advised = (id: string, level: string): Body<KnownEntry> => ({
      id,
      kind: "advised",
      level,
      said: `Words of ${level}.`,
      p50: 60,
      p90: 140,
      parts: ["lower-ball-joint@front-left"],
    });
    const both = [open, advised("a", "careful"), { ...advised("b", "hold"), note: "Asked twice." }];
    expect(foldCase(entries(...both)).advised).toEqual({
      level: "hold",
      said: "Words of hold.",
      p50: 60,
      p90: 140,
      parts: ["lower-ball-joint@front-left"],
      note: "Asked twice.",
      at: "2026-01-01T00:00:02.000Z",
      by: "ana",
    });
    const undone = foldCase(entries(...both, { id: "r", kind: "retracted", entry: "b" }));
    expect(undone.advised?.level).toBe("careful");
    // Advice before the car was seen is no verdict, and opens none again.
    expect(undone.verdict).toBeUndefined();
    expect(foldCase(entries(open)).advised).toBeUndefined();
  });

  it("leaves entries of another case without effect", () => {
    const stray = { ...entries(yes("a", 9))[0]!, caseId: "c2" };
    const state = foldCase([...entries(open), stray]);
    expect(state.answers).toEqual([]);
    expect(state.timeline.map((item) => item.ignored)).toEqual([false, true]);
  });

  it("gives the contexts that are present", () => {
    const kerb: Body<KnownEntry> = {
      ...yes("k"),
      kind: "answered",
      finding: "kerb-strike",
    } as Body<KnownEntry>;
    expect(presentContexts(jobCardKnowledge, foldCase(entries(open, yes("a"), kerb)))).toEqual([
      "kerb-strike",
    ]);
  });
});

describe("undo", () => {
  it("takes back the newest entry that holds, then the one before it, never the opening", () => {
    const list = entries(open, yes("a"), no("b"));
    expect(entryToUndo(list)?.id).toBe("b");
    const once = [...list, ...entries({ id: "r", kind: "retracted", entry: "b", at: 10 })];
    expect(entryToUndo(once)?.id).toBe("a");
    const twice = [...once, ...entries({ id: "s", kind: "retracted", entry: "a", at: 11 })];
    expect(entryToUndo(twice)).toBeUndefined();
    expect(retractionToRedo(twice)?.id).toBe("s");
    expect(retractionToRedo(list)).toBeUndefined();
    const redone = [...twice, ...entries({ id: "t", kind: "retracted", entry: "s", at: 12 })];
    expect(retractionToRedo(redone)?.id).toBe("r");
    expect(entryToUndo(redone)?.id).toBe("a");
    expect(retractionToRedo([...redone, ...entries(yes("n", 13))])).toBeUndefined();
  });

  it("takes back together what one tap answered to one check, and no more", () => {
    const of = (entry: ReturnType<typeof yes>, check: string) => ({ ...entry, check });
    const list = entries(open, of(yes("a", 1), "x@car"), of(yes("b", 5), "y@car"), of(no("c", 5), "y@car"));
    const taken = entriesToUndo(list).map((entry) => entry.id);
    expect(taken).toHaveLength(2);
    expect(taken).toEqual(expect.arrayContaining(["b", "c"]));
    expect(entriesToUndo(entries(open, yes("a", 1), no("b", 1))).map((entry) => entry.id)).toHaveLength(1);
    expect(entriesToUndo(entries(open))).toEqual([]);
  });

  it("leaves what others entered alone when asked for one person's", () => {
    const list = entries(open, { ...yes("a"), by: "ben" }, no("b"));
    expect(entryToUndo(list, "ben")?.id).toBe("a");
    expect(entryToUndo(list, "eve")).toBeUndefined();
  });
});
