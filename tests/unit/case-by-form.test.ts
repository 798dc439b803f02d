import { describe, expect, it } from "vitest";
import {
  type Entry,
  entriesToUndo,
  entryLabel,
  foldCase,
  retractionToRedo,
  saidByForm,
} from "../../lib/case/index.ts";
import { made, note, opening, second } from "../support/made-entries.ts";

const form = { by: "the customer", from: "customer", link: "l1" };
const answer = (id: string, at: string, more: Record<string, unknown> = {}): Entry =>
  made("c", id, at, {
    kind: "answered",
    finding: "play-3-9@front-left",
    state: "absent",
    how: "report",
    ...more,
  });
const asked = { question: "ask:noise", text: "Is there a noise?", choice: "Yes" };

describe("what the customer gives by a form", () => {
  it("is marked as theirs in the state and in the line of the timeline", () => {
    const photo = made("c", "p", second(4), { ...form, kind: "photo", photo: "p", width: 4, height: 3 });
    const { answers, photos } = foldCase([opening("c"), answer("a", second(3), form), photo]);
    expect(answers).toMatchObject([{ finding: "play-3-9@front-left", from: "customer", by: "report" }]);
    expect(photos).toEqual([{ entry: "p", photo: "p", width: 4, height: 3, from: "customer" }]);
    expect(entryLabel(photo).at(-1)).toEqual({ is: "words", text: "the customer, by the form" });
  });

  // A hand at the car knows better than a report: our own rule, as reports weigh less than checks.
  it("does not put aside what was found by hand, before or after", () => {
    const byHand = (at: string): Entry => answer("hand", at, { how: "check", state: "present" });
    for (const at of [second(2), second(8)]) {
      const { answers } = foldCase([opening("c"), byHand(at), answer("a", second(5), form)]);
      expect(answers).toMatchObject([{ state: "present", by: "check" }]);
    }
    const later = foldCase([opening("c"), byHand(second(2)), answer("a", second(5))]);
    expect(later.answers).toMatchObject([{ state: "absent", by: "report" }]);
  });

  it("is passed over by the undo and redo of whoever works on the case", () => {
    const list = [opening("c"), note("c", "n"), answer("a", second(5), form)];
    expect(entriesToUndo(list).map(({ id }) => id)).toEqual(["n"]);
    const back = made("c", "b", second(6), { ...form, kind: "retracted", entry: "a" });
    expect(retractionToRedo([...list, back])).toBeUndefined();
  });

  it("is gathered by what was said, in order, without what was taken back", () => {
    const list = [
      opening("c"),
      answer("q1", second(3), { ...form, asked }),
      answer("q1_1", second(3), { ...form, finding: "noise" }),
      made("c", "w", second(4), { ...form, kind: "told", text: "It clunks" }),
      made("c", "p", second(5), { ...form, link: "l2", kind: "photo", photo: "p", width: 4, height: 3 }),
      answer("gone", second(6), { ...form, asked }),
      made("c", "back", second(7), { ...form, kind: "retracted", entry: "gone" }),
      made("c", "by-staff", second(8), { kind: "told", text: "told at the desk" }),
    ];
    expect(saidByForm(list.toReversed())).toMatchObject([
      { id: "q1", kind: "answer", question: "ask:noise", text: "Yes", entries: ["q1", "q1_1"] },
      { id: "w", kind: "words", text: "It clunks" },
      { id: "p", kind: "photo", photo: "p", link: "l2" },
    ]);
    expect(saidByForm(list, "l2").map(({ id }) => id)).toEqual(["p"]);
  });

  // Our own rule: what a newer version wrote is kept, and has no effect.
  it.each(["of-a-newer-version", "note", "retracted"])("passes over an entry of kind %s", (kind) => {
    const list = [
      made("c", "w", second(4), { ...form, kind: "told", text: "It clunks" }),
      made("c", "other", second(5), { ...form, kind, text: "more", entry: "nothing" }),
    ];
    expect(saidByForm(list).map(({ id }) => id)).toEqual(["w"]);
    expect(saidByForm(list, "l1").map(({ id }) => id)).toEqual(["w"]);
  });
});
