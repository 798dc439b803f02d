import type { LintFinding, LintRule } from "./rule.ts";

/** Every order is one finding at most, and one that a measured frequency can answer. */
export const ordersFit: LintRule = {
  name: "orders-fit",
  about:
    "Each shaft of orders.json stands once, each of its listed orders is one finding at most, and that finding is a plain yes or no.",
  check: ({ knowledge, observations }) => {
    const { shafts, findings } = knowledge.orders;
    const found: LintFinding[] = [];
    const say = (message: string, mend: string) => found.push({ record: "orders.json", message, mend });
    shafts.forEach(({ shaft, orders }, i) => {
      if (shafts.findIndex((other) => other.shaft === shaft) !== i)
        say(`shafts.${i}: ${shaft} stands twice`, "Put its orders together.");
      if (new Set(orders).size !== orders.length)
        say(`shafts.${i}.orders: an order stands twice`, "Remove the second.");
    });
    findings.forEach(({ shaft, order, observation }, i) => {
      const turning = shafts.find((s) => s.shaft === shaft);
      const listed = typeof order === "number" ? turning?.orders.includes(order) : shaft === "engine";
      if (turning === undefined || listed !== true) {
        say(
          `findings.${i}: order ${order} of the ${shaft} is not listed`,
          `Add it to the ${shaft}'s orders, or remove the finding.`,
        );
      }
      if (findings.findIndex((f) => f.shaft === shaft && f.order === order) !== i)
        say(`findings.${i}: order ${order} of the ${shaft} is a finding already`, "Keep one of them.");
      if ((observations.get(observation)?.levels.length ?? 1) > 1)
        say(`findings.${i}: "${observation}" has grades`, "Name an observation that is a plain yes or no.");
    });
    return found;
  },
};
