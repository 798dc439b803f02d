import { expect, test } from "vitest";
import { drawnShapes, layoutsOf, ownSpots } from "../../app/ui/drawing/marks.ts";
import { likelyCar } from "../../app/ui/drawing/likely-car.ts";
import { readCar } from "../../lib/car/car.ts";
import { readings } from "../../lib/car/readings.ts";
import { checkLogic, evaluateLogic } from "../../lib/knowledge/logic.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/** Values that an attribute of the car can have. */
function valuesOf(knowledge: Knowledge, path: string): string[] {
  const attribute = knowledge.car.attributes.find((a) => a.path === path);
  return attribute?.kind === "choice" ? attribute.values.map((v) => v.id) : [];
}

test("on every layout each part that such a car can have is drawn at its own side and axle", () => {
  const knowledge = shippedKnowledge();
  const places = new Map(knowledge.places.places.map((place) => [place.id, place]));
  const all = new Set(knowledge.parts.map((part) => part.id));
  const missing: string[] = [];
  let looked = 0;
  for (const front of valuesOf(knowledge, "front.layout")) {
    for (const rear of valuesOf(knowledge, "rear.layout")) {
      const told = { front: { layout: front }, rear: { layout: rear } };
      const shapes = drawnShapes(layoutsOf(knowledge, likelyCar(knowledge, told)), all);
      for (const part of knowledge.parts) {
        const paths = new Set(part.when === undefined ? [] : checkLogic(part.when));
        for (const id of part.places) {
          const place = places.get(id);
          const ways = readings(knowledge, readCar(knowledge, told).car, paths, { place });
          if (!ways.some(({ data }) => evaluateLogic(part.when ?? true, data))) continue;
          looked += 1;
          if (ownSpots(shapes, part.id, place).length === 0)
            missing.push(`${part.id}@${id}: ${front}, ${rear}`);
        }
      }
    }
  }
  expect(looked).toBeGreaterThan(5000);
  expect(missing).toEqual([]);
});
