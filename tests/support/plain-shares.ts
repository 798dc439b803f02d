import type { PublishedShares } from "../../lib/knowledge/schema/published-shares.ts";

/** Published shares of a hand-made knowledge: one fleet of five-year-old cars, one group of one part, one figure. */
export function plainShares(part: string): PublishedShares {
  return {
    about: "Invented.",
    fleets: [
      {
        id: "fleet",
        name: "an invented fleet",
        car: {},
        ages: [{ years: 5, weight: 1 }],
        basis: "common-practice",
      },
    ],
    found: [],
    groups: [{ id: "group", name: "the part", items: [], parts: [part], exceptParts: [], size: "large" }],
    rows: [
      {
        id: "row",
        group: "group",
        words: ["minor", "major", "dangerous"],
        fleet: "fleet",
        year: 2000,
        base: "tests",
        share: 0.02,
        basis: "common-practice",
      },
    ],
    assumptions: ["Everything is invented."],
  };
}
