export {
  chanceOverCost,
  fixedChecklist,
  gainAlone,
  gainPerMinute,
  likeliestFirst,
  randomChoice,
  shippedChoice,
} from "./choices.ts";
export { playCase, playUnder } from "./play-case.ts";
export type { PlayedCase, PlayOptions } from "./play-case.ts";
export type { Policy, Situation, StopRule, Verdict } from "./policy.ts";
export { byConfidence, byExpectedCost, byMargins, marginName } from "./stop-rules.ts";
