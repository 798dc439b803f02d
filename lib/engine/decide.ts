import type { Costs } from "../knowledge/schema/costs.ts";
import type { Answer } from "./answers.ts";
import { type CheckingOn, checkingOn, isWorth, WORTH_CHECKING } from "./checking-on.ts";
import type { Grounded } from "./ground.ts";
import { type Outlook, repairOutlook } from "./outlook.ts";
import type { ProposedCheck } from "./propose.ts";
import { asMoney, workshopCosts } from "./repair-cost.ts";
import type { Weighing } from "./weigh.ts";

/** One of the ways to go on, with what it is expected to cost from here to the end. */
export interface Choice {
  readonly way: "repair" | "check" | "refer";
  /** Units: minutes, with money turned into them at the hourly rate. */
  readonly minutes: number;
  readonly money: number;
  /** Repairs in their order for "repair"; ids of checks for "check"; empty for "refer". */
  readonly steps: readonly string[];
  /** True for checking on until it is known, which is reckoned by a rule of thumb; the steps then hold the first check. */
  readonly rough: boolean;
}

/** A repair with its chance of being one that is needed. */
export interface LikelyRepair {
  /** `part@place` */
  readonly repair: string;
  readonly chance: number;
  /** Work, part and seeing that it is gone. Units: minutes, with money turned into them. */
  readonly minutes: number;
}

/** What to do now. */
export interface Decision {
  readonly kind: "nothing-reported" | "check" | "repair" | "refer";
  /** A decisive finding proves a part that explains the complaint, or its chance reaches the floor: "repair now". */
  readonly sure: boolean;
  readonly why: string;
  /** The ways to go on, cheapest first; none when there is nothing to explain. */
  readonly choices: readonly Choice[];
  /** Likeliest repairs, best first. */
  readonly repairs: readonly LikelyRepair[];
  readonly currency: string;
  readonly moneyAMinute: number;
}

/** What deciding needs besides the weighing. */
export interface DecideOptions {
  readonly costs?: Costs | undefined;
  /** End at the first check that is worth it: the choices then hold that one, not the best. */
  readonly firstWorth?: boolean | undefined;
}

/**
 * Compares repairing now, checking on and handing over by expected cost.
 *
 * Checking on is worth it when the best check, or the best batch of one set-up, saves more than the margin times its own
 * minutes; it also is while a fault of the severities named for safety is in doubt and a check tells of it. Questions,
 * for which savings are not worked out, count a bit as worth what the best check makes of one.
 * Source: one-step value of information on the expected cost of repair; Heckerman, Breese and Rommelse 1995 (from memory).
 */
export function decideNext(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  proposed: readonly ProposedCheck[],
  options: DecideOptions = {},
): Decision {
  const costs = options.costs ?? workshopCosts(grounded.knowledge);
  const { weighed } = weighing;
  const outlook = repairOutlook(grounded, weighing, costs);
  if (outlook === undefined) {
    const why = "Nothing was noticed yet: say what the car does.";
    return { kind: "nothing-reported", sure: false, why, choices: [], repairs: [], ...unitsOf(costs) };
  }
  const now = Math.min(outlook.plan.cost, outlook.referral);
  const repairs = likelyRepairs(outlook);
  const proven = weighed.ranking.some((r) => r.proven && r.explains >= costs.stop.floor);
  const on = proven
    ? []
    : checkingOn(grounded, answers, proposed, outlook, now, costs, options.firstWorth === true);
  const worth = on.filter((c) => isWorth(c, costs));
  const known = (worth.length > 0 ? worth : on).filter((c) => c.rough !== true);
  const best = (known.length > 0 ? known : worth).reduce<CheckingOn | undefined>(
    (top, c) => (top === undefined || c.saves - c.cost > top.saves - top.cost ? c : top),
    undefined,
  );
  const choices: Choice[] = [
    choice(costs, "repair", outlook.plan.cost, planSteps(outlook)),
    choice(costs, "refer", outlook.referral, []),
    ...(best === undefined
      ? []
      : [choice(costs, "check", best.cost + now - best.saves, best.steps, best.rough)]),
  ].sort((a, b) => a.minutes - b.minutes);
  const common = { choices, repairs, ...unitsOf(costs) };
  if (proven) {
    const why = "A decisive finding proves a part that explains the complaint: the verdict can be given.";
    return { kind: "repair", sure: true, why, ...common };
  }
  if (worth.length > 0 || worthAsking(on, proposed, costs)) {
    return { kind: "check", sure: false, why: "The next check saves more than it costs.", ...common };
  }
  if (safetyInDoubt(grounded, weighing, costs) && tells(proposed)) {
    const why = "A fault that is dangerous is in doubt: check on until it is proven or ruled out.";
    return { kind: "check", sure: false, why, ...common };
  }
  const [likeliest] = repairs;
  if (likeliest !== undefined && outlook.plan.cost < outlook.referral) {
    const sure = likeliest.chance >= costs.stop.floor;
    const why = sure
      ? "Repairing now is cheaper than checking on."
      : "No check left is worth its minutes: repair in this order, and look after each whether it is gone; or refer it.";
    return { kind: "repair", sure, why, ...common };
  }
  const why = "Neither a check nor a repair is worth its cost: look with other means, or hand it over.";
  return { kind: "refer", sure: false, why, ...common };
}

function worthAsking(on: readonly CheckingOn[], proposed: readonly ProposedCheck[], costs: Costs): boolean {
  const questions = proposed.filter((p) => p.kind === "question" && p.gainBits >= WORTH_CHECKING);
  if (questions.length === 0) return false;
  const checks = proposed.filter((p) => p.kind === "check");
  if (checks.length === 0) return true;
  const bits = new Map(checks.map((p) => [p.id, p.gainBits]));
  const perBit = on.reduce((most, { steps, saves }) => {
    const gain = steps.length === 1 ? (bits.get(steps[0] ?? "") ?? 0) : 0;
    return gain >= WORTH_CHECKING ? Math.max(most, saves / gain) : most;
  }, 0);
  return questions.some((q) => perBit * q.gainBits > costs.stop.margin * q.minutes);
}

/** Is a fault that is dangerous likely enough to matter and not likely enough to name? */
function safetyInDoubt(grounded: Grounded, { weighed }: Weighing, costs: Costs): boolean {
  const { safety, doubt, floor } = costs.stop;
  return weighed.ranking.some(
    ({ suspect, explains }) =>
      explains >= doubt &&
      explains < floor &&
      safety.some((word) => grounded.faults.get(suspect.fault)?.severity.word === word),
  );
}

function tells(proposed: readonly ProposedCheck[]): boolean {
  return proposed.some((p) => p.kind === "check" && p.gainBits >= WORTH_CHECKING);
}

function likelyRepairs({ chances, priced }: Outlook): LikelyRepair[] {
  return priced.repairs
    .map((repair, i) => ({ repair, chance: chances[i] ?? 0, minutes: priced.prices.right[i] ?? 0 }))
    .sort((a, b) => b.chance - a.chance || (a.repair < b.repair ? -1 : 1));
}

function unitsOf(costs: Costs): Pick<Decision, "currency" | "moneyAMinute"> {
  return { currency: costs.currency, moneyAMinute: asMoney(costs, 1) };
}

function planSteps({ plan, priced }: Outlook): string[] {
  return plan.order.map((i) => priced.repairs[i] ?? "");
}

function choice(
  costs: Costs,
  way: Choice["way"],
  minutes: number,
  steps: readonly string[],
  rough = false,
): Choice {
  return { way, minutes, money: asMoney(costs, minutes), steps, rough };
}
