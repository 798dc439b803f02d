import type { Doubt } from "../../lib/knowledge/schema/doubt.ts";

/** Doubt in a hand-made knowledge. */
export function plainDoubt(): Doubt {
  const basis = "common-practice";
  const spread = { spread: 0.6, why: "Invented.", basis };
  return {
    about: "Invented.",
    spreads: { priors: spread, leaks: spread },
    misread: { check: 0.03, report: 0.1, why: "Invented.", basis },
    lookAgain: { bits: 4, falseAlarms: 0.05, why: "Invented.", basis },
    steadyFrom: 0.8,
    unexplainedFrom: 0.5,
  };
}
