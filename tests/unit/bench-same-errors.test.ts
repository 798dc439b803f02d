import { describe, expect, test } from "vitest";
import { minutesAt, sameErrorsTable, type SlicedWay } from "../bench/same-errors.ts";

/* Worked by hand. */

describe("minutes at the same share of errors", () => {
  const curve = [
    { minutes: 200, errors: 0.1 },
    { minutes: 60, errors: 0.5 },
    { minutes: 100, errors: 0.3 },
  ];

  test.each([
    [0.3, 100, true],
    // Half way from 30 to 10 % is half way from 100 to 200 minutes.
    [0.2, 150, true],
    [0.4, 80, true],
    // More errors than it ever makes: it needs no more than its shortest.
    [0.6, 60, true],
    [0.05, 200, false],
  ])("at %d errors %d minutes, reached: %s", (errors, minutes, reached) => {
    const found = minutesAt(errors, curve);
    expect(found.minutes).toBeCloseTo(minutes, 9);
    expect(found.reached).toBe(reached);
  });
});

describe("the table", () => {
  const way = (stop: string, minutes: number, wrong: readonly number[]): SlicedWay => ({
    stop,
    policy: "any",
    slices: wrong.map((w) => ({ minutes: [minutes, minutes], wrong: w })),
  });

  test("a share of what the other takes, without error when all slices are alike", () => {
    const text = sameErrorsTable(
      [way("own", 30, [1, 1, 1])],
      [way("long", 120, [0, 0, 0]), way("short", 60, [2, 2, 2])],
    );
    // 50 % errors: half way between 60 and 120.
    expect(text.split("\n")[1]?.trim().split(/ {2,}/)).toEqual(["own: any", "30", "50", "90.0", "33.3", "0"]);
  });

  test("says when the other never makes as few errors", () => {
    const text = sameErrorsTable([way("own", 30, [0, 0])], [way("long", 120, [1, 1])]);
    expect(text).toContain("over 120");
    expect(text).toContain("under 25.0");
  });

  test("a slice in which a way was not played counts for nothing", () => {
    const own = way("own", 30, [1, 1]);
    const other = way("other", 60, [1, 1]);
    const gap = { ...other, slices: [...other.slices, undefined] };
    expect(sameErrorsTable([own], [gap])).toBe(sameErrorsTable([own], [other]));
  });
});
