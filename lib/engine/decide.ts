import type { Costs } from "../knowledge/schema/costs.ts";
import type { Answer } from "./answers.ts";
import { foreseenBatches, openFindings } from "./batch.ts";
import type { Grounded } from "./ground.ts";
import { type JointResult, jointGain, noResult, resultChances, splitResults } from "./joint-results.ts";
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
}

/** A repair with its chance of being one that is needed. */
export interface LikelyRepair {
  /** `part@place` */
  readonly repair: string;
  readonly chance: number;
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
}

/** What deciding needs besides the weighing. */
export interface DecideOptions {
  readonly costs?: Costs | undefined;
  /** End at the first check that is worth it: the choices then hold that one, not the best. */
  readonly firstWorth?: boolean | undefined;
}

/** A proven suspect ends the search when it also explains the complaint at least this well. */
const EXPLAINS_ENOUGH = 0.5;
/** Information below this is not worth a trip to the car. */
const WORTH_CHECKING = 0.03;
/** Checks whose saving is worked out. */
const LOOKED_AT = 25;
const BATCH = 5;

/** Making some checks: what it costs and what it is expected to save. Units: minutes. */
interface CheckingOn {
  readonly steps: readonly string[];
  readonly cost: number;
  readonly saves: number;
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
  const { weighed, explanation } = weighing;
  if (explanation === undefined) {
    const why = "Nothing was noticed yet: say what the car does.";
    return { kind: "nothing-reported", sure: false, why, choices: [], repairs: [], currency: costs.currency };
  }
  const outlook = repairOutlook(grounded, explanation, costs);
  const now = Math.min(outlook.plan.cost, outlook.priced.prices.refer);
  const repairs = likelyRepairs(outlook);
  const proven = weighed.ranking.some((r) => r.proven && r.explains >= EXPLAINS_ENOUGH);
  const on = proven
    ? []
    : checkingOn(grounded, answers, proposed, outlook, now, costs, options.firstWorth === true);
  const best = on.reduce<CheckingOn | undefined>(
    (top, c) => (top === undefined || c.saves - c.cost > top.saves - top.cost ? c : top),
    undefined,
  );
  const choices: Choice[] = [
    choice(costs, "repair", outlook.plan.cost, planSteps(outlook)),
    choice(costs, "refer", outlook.priced.prices.refer, []),
    ...(best === undefined ? [] : [choice(costs, "check", best.cost + now - best.saves, best.steps)]),
  ].sort((a, b) => a.minutes - b.minutes);
  const common = { choices, repairs, currency: costs.currency };
  if (proven) {
    const why = "A decisive finding proves a part that explains the complaint: the verdict can be given.";
    return { kind: "repair", sure: true, why, ...common };
  }
  const worth = on.some((c) => isWorth(c, costs));
  if (worth || worthAsking(on, proposed, costs)) {
    return { kind: "check", sure: false, why: "The next check saves more than it costs.", ...common };
  }
  if (safetyInDoubt(grounded, weighing, costs) && tells(proposed)) {
    const why = "A fault that is dangerous is in doubt: check on until it is proven or ruled out.";
    return { kind: "check", sure: false, why, ...common };
  }
  const [likeliest] = repairs;
  if (likeliest !== undefined && outlook.plan.cost < outlook.priced.prices.refer) {
    const sure = likeliest.chance >= costs.stop.floor;
    const why = sure
      ? "Repairing now is cheaper than checking on."
      : "No check left is worth its minutes: repair in this order, and look after each whether it is gone; or refer it.";
    return { kind: "repair", sure, why, ...common };
  }
  const why = "Neither a check nor a repair is worth its cost: look with other means, or hand it over.";
  return { kind: "refer", sure: false, why, ...common };
}

/** What each check, and each batch, is expected to save. */
function checkingOn(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: readonly ProposedCheck[],
  outlook: Outlook,
  now: number,
  costs: Costs,
  firstWorth: boolean,
): CheckingOn[] {
  const settled = new Set(answers.flatMap((a) => (a.by === "check" ? [a.finding] : [])));
  const start = noResult(outlook.components);
  const saves = (results: readonly JointResult[]): number =>
    Math.max(
      0,
      results.reduce((sum, weights) => sum - outlook.costOf(weights), now),
    );
  const out: CheckingOn[] = [];
  const whole = toTheEnd(outlook, proposed, now);
  if (whole !== undefined) {
    out.push(whole);
    if (firstWorth && isWorth(whole, costs)) return out;
  }
  for (const check of proposed.filter((p) => p.kind === "check").slice(0, LOOKED_AT)) {
    const chances = resultChances(outlook.components, openFindings(grounded, check, settled));
    const results = splitResults(start, chances);
    const cost = check.minutes + check.setUpMinutes;
    const made = { steps: [check.id], cost, saves: saves(results) };
    out.push(made);
    if (firstWorth && isWorth(made, costs)) return out;
  }
  for (const batch of foreseenBatches(grounded, answers, proposed, outlook, BATCH)) {
    if (batch.checks.length < 2) continue;
    const made = {
      steps: batch.checks.map((c) => c.check.id),
      cost: batch.minutes + batch.setUpMinutes,
      saves: saves(batch.results),
    };
    out.push(made);
    if (firstWorth && isWorth(made, costs)) return out;
  }
  return out;
}

/**
 * Checking on until it is known: what is open yet at the rate of the best check, against what knowing would save.
 *
 * One check alone says little while many causes are about equally likely, although several would find the one. What comes
 * later tells less a minute than the best check now, so twice the time is reckoned with.
 */
function toTheEnd(outlook: Outlook, proposed: readonly ProposedCheck[], now: number): CheckingOn | undefined {
  const [best] = proposed;
  if (best === undefined || best.gainBits < WORTH_CHECKING) return undefined;
  const open = jointGain(
    outlook.components.map((c, k) =>
      new Float64Array(outlook.components.length).fill(c.probability, k, k + 1),
    ),
    outlook.values,
  );
  const known = outlook.components.reduce((sum, component, c) => {
    const alone = new Float64Array(outlook.components.length);
    alone[c] = component.probability;
    return sum + outlook.costOf(alone);
  }, 0);
  return { steps: [best.id], cost: (2 * open) / best.score, saves: now - known };
}

function isWorth({ saves, cost }: CheckingOn, costs: Costs): boolean {
  return saves > costs.stop.margin * cost;
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

function likelyRepairs({ causes, priced }: Outlook): LikelyRepair[] {
  const chances = new Float64Array(priced.repairs.length);
  causes.cures.forEach((cures, c) => {
    for (const repair of cures ?? []) chances[repair] = (chances[repair] ?? 0) + (causes.probability[c] ?? 0);
  });
  return priced.repairs
    .map((repair, i) => ({ repair, chance: chances[i] ?? 0 }))
    .sort((a, b) => b.chance - a.chance || (a.repair < b.repair ? -1 : 1));
}

function planSteps({ plan, priced }: Outlook): string[] {
  return plan.order.map((i) => priced.repairs[i] ?? "");
}

function choice(costs: Costs, way: Choice["way"], minutes: number, steps: readonly string[]): Choice {
  return { way, minutes, money: asMoney(costs, minutes), steps };
}
