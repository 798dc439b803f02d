import type { Lay } from "../../lib/knowledge/schema/lay.ts";

/** Lay words in a hand-made knowledge. */
export function plainLay(): Lay {
  return {
    about: "Invented.",
    before: "Please do not drive to find out.",
    first: { question: "What is it?" },
    together: [
      {
        id: "end",
        question: "Is it at the front or at the back?",
        features: ["from-front", "from-rear"],
        none: "Neither",
        most: 2,
      },
    ],
    places: {},
    tries: { several: "More than one", none: "None of these" },
    pictures: [
      {
        id: "plan",
        name: "A square",
        width: 40,
        height: 40,
        shapes: [{ kind: "outline", path: "M1 1 L39 1 L39 39 L1 39 Z" }],
      },
    ],
    limits: { questionLetters: 90, ease: 60, jargon: ["bush"], banned: ["jack"] },
  };
}
