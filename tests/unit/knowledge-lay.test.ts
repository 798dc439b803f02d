import { expect, test } from "vitest";
import { layPicture } from "../../lib/knowledge/lay-picture.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const { lay } = knowledge;

test("every drawing keeps within its box and goes with some question", () => {
  const used = [
    lay?.first,
    ...(lay?.together ?? []),
    ...[knowledge.complaints, knowledge.features, knowledge.contexts, knowledge.checks].flatMap((records) =>
      records.map((r) => r.lay),
    ),
  ].flatMap((words) => words?.picture ?? []);
  expect(lay?.pictures.map((p) => p.id).toSorted()).toEqual([...new Set(used)].toSorted());
  for (const { id, width, height, shapes } of lay?.pictures ?? []) {
    for (const { kind, path, text } of shapes) {
      // All paths are absolute: moves, lines and curves, pairs of coordinates throughout.
      expect(path, id).toMatch(/^[MLQCZ0-9 .]+$/);
      const numbers = (path.match(/[0-9.]+/g) ?? []).map(Number);
      expect(numbers.length % 2, path).toBe(0);
      numbers.forEach((n, i) =>
        expect(n, `${id}: ${path}`).toBeLessThanOrEqual(i % 2 === 0 ? width : height),
      );
      expect(text !== undefined, path).toBe(kind === "text");
    }
  }
});

test("a question without a drawing, or of a release that has none, gives none", () => {
  expect(layPicture(knowledge, { picture: "car-plan" })?.shapes.length).toBeGreaterThan(5);
  expect(layPicture(knowledge, {})).toBeUndefined();
  expect(layPicture({ lay: undefined }, { picture: "car-plan" })).toBeUndefined();
});

test("whoever is asked is told first not to drive or reach under the car to find out", () => {
  expect(lay?.before).toMatch(/do not drive/);
  expect(lay?.before).toMatch(/do not raise/);
});
