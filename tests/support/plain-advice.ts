import type { Advice } from "../../lib/knowledge/schema/advice.ts";

/** Advice in a hand-made knowledge. */
export function plainAdvice(): Advice {
  return {
    about: "Invented.",
    levels: [
      { id: "recover", name: "Do not drive it", from: 2, say: "Have it recovered." },
      { id: "careful", name: "With care", from: 0, say: "From here nobody can tell." },
    ],
    stopIf: ["it gets worse"],
    ready: {
      returnShare: 0.2,
      returnMinutes: 10,
      waitMinutes: 60,
      why: "Invented.",
      basis: "common-practice",
    },
  };
}
