import type { Costs } from "../../lib/knowledge/schema/costs.ts";

/** Costs in which money counts for nothing: an hour costs 60, parts are free, so a minute is a minute. */
export const plainCosts: Costs = {
  about: "Invented: minutes only.",
  currency: "EUR",
  hourlyRate: 60,
  bands: { free: { name: "free", price: 0 } },
  byKind: {},
  byPart: {},
  byGroup: {},
  otherwise: "free",
  verifyMinutes: 10,
  wrongPart: { minutes: 0 },
  comeback: { chance: 0, minutes: 0 },
  refer: { minutes: 120, fee: 0 },
  stop: { margin: 0.5, floor: 0.8, safety: ["dangerous"], doubt: 0.1 },
  basis: "common-practice",
};
