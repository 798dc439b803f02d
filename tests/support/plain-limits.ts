import type { Limits } from "../../lib/knowledge/schema/limits.ts";

/** Limits of a hand-made knowledge: one quantity, which the observation named answers, and one flat limit. */
export function plainLimits(observation: string): Limits {
  return {
    about: "Invented.",
    decides: "The maker's figure decides.",
    quantities: [
      {
        id: "play",
        name: "play",
        how: "Push and pull.",
        circle: "the tyre",
        angle: "swing",
        observation,
      },
    ],
    limits: [
      {
        id: "flat",
        quantity: "play",
        rule: "an invented rule",
        country: "EU",
        applies: "every car",
        unit: "mm",
        by: "circle",
        figure: { kind: "flat", most: 3 },
        basis: "common-practice",
      },
    ],
  };
}
