import { describe, expect, it } from "vitest";
import { foldCase, type KnownEntry } from "../../lib/case/index.ts";
import { readCar } from "../../lib/car/car.ts";
import { fittedThatHold, groundCar } from "../../lib/engine/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const head = (id: string, second: number) => ({
  id,
  caseId: "c1",
  by: "ana",
  at: new Date(Date.UTC(2026, 0, 1) + second * 1000).toISOString(),
});
const opened: KnownEntry = {
  ...head("o", 0),
  kind: "opened",
  release: "aaa",
  car: {},
  customer: "",
  vehicle: "invented van",
};
const fitted: KnownEntry = {
  ...head("f", 1),
  kind: "fitted",
  part: "some-part",
  place: "front-left",
  atKm: 60_000,
};

describe("the history of the car in a case", () => {
  it("keeps parts fitted, passes over one without an age, and takes one back", () => {
    const ageless: KnownEntry = { ...head("g", 2), kind: "fitted", part: "other-part" };
    const back: KnownEntry = { ...head("r", 3), kind: "retracted", entry: "f" };
    expect(foldCase([opened, fitted, ageless]).fitted).toEqual([
      { entry: "f", part: "some-part", place: "front-left", atKm: 60_000 },
    ]);
    expect(foldCase([opened, fitted, back]).fitted).toEqual([]);
  });

  it("has the turning parts as last entered, whole", () => {
    const first: KnownEntry = {
      ...head("t", 1),
      kind: "turning",
      tyre: "205/55R16",
      finalDrive: 3.7,
      measured: [],
    };
    const later: KnownEntry = { ...head("u", 2), kind: "turning", tyre: "195/65R15", measured: [] };
    expect(foldCase([opened, first, later]).turning).toEqual({ tyre: "195/65R15", measured: [] });
    expect(foldCase([opened]).turning).toBeUndefined();
  });
});

describe("a part of its own age", () => {
  const knowledge = shippedKnowledge();
  const car = { odometerKm: 200_000 };
  const fault = knowledge.faults.find((f) => "km" in f.life && f.life.shape > 1.5);
  const part = fault?.part ?? "";

  it("is less likely to have failed when it is young, at its own place only", () => {
    const place = knowledge.parts.find((p) => p.id === part)?.places[0] ?? "";
    const old = groundCar(knowledge, car);
    const young = groundCar(knowledge, car, [], [{ part, place, atKm: 195_000 }]);
    const priorOf = (grounded: typeof old, suspect: string) =>
      grounded.prior[grounded.suspectIndex.get(suspect) ?? -1] ?? Number.NaN;
    for (const { id, fault: own, part: of, place: at } of old.suspects) {
      const wears = of === part && at === place && own === fault?.id;
      if (wears) expect(priorOf(young, id)).toBeLessThan(priorOf(old, id));
      else if (of !== part) expect(priorOf(young, id)).toBe(priorOf(old, id));
    }
  });

  it("is left out when the car cannot have it", () => {
    const known = readCar(knowledge, car).car;
    const fine = { part, atKm: 10 };
    expect(
      fittedThatHold(knowledge, known, [fine, { part, atKm: 200_001 }, { part: "no-such-part", atKm: 1 }]),
    ).toEqual([fine]);
  });
});
