import type { Orders } from "../../lib/knowledge/schema/orders.ts";

/** Orders of a hand-made knowledge: two of the wheels', the first of which is the observation named. */
export function plainOrders(observation: string): Orders {
  return {
    about: "Invented.",
    shafts: [
      { shaft: "wheel", name: "wheels", orders: [1, 2], tolerance: 0.04, apart: "Goes by road speed." },
    ],
    findings: [{ shaft: "wheel", order: 1, observation, basis: "common-practice" }],
  };
}
