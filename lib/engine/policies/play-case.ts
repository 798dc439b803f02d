import type { Costs } from "../../knowledge/schema/costs.ts";
import type { Answer } from "../answers.ts";
import type { Grounded } from "../ground.ts";
import { type ProposedCheck, proposeChecks, type ProposeOptions } from "../propose.ts";
import { remedyCost, repairOf } from "../repair-cost.ts";
import { checkResult, questionResult } from "../simulate/results.ts";
import { firedSuspects, type SimulatedCar } from "../simulate/simulated-car.ts";
import { weighing } from "../weigh.ts";
import type { Policy, Situation, StopRule, Verdict } from "./policy.ts";

/** Information of a check below which waiting for its result is not worth while. */
const TELLS_LITTLE = 0.1;

/** How a case is played. */
export interface PlayOptions
  extends Pick<ProposeOptions, "who" | "lift" | "helper" | "only" | "notPossible"> {
  readonly costs: Costs;
  /** Chances for policies that choose by chance. */
  readonly uniform: () => number;
  /** Set-up that the car is in at first; the knowledge's own start when left out. */
  readonly setUp?: string | undefined;
  /** Minutes after which the search ends whatever is known; 400 when left out. */
  readonly mostMinutes?: number | undefined;
  /** Most checks of one set-up made before weighing again, while the best tells little; 1 when left out. */
  readonly atOnce?: number | undefined;
  /** Called after each weighing, with the rules that had not ended by then: for looking on, not for changing anything. */
  readonly watch?: ((situation: Situation, open: readonly StopRule[]) => void) | undefined;
}

/** A case played to its end. */
export interface PlayedCase {
  readonly verdict: Verdict;
  /** The part named did cause the complaint; or it was handed over and nothing in the knowledge did. */
  readonly right: boolean;
  /** Minutes to the verdict: checks, questions, set-ups. */
  readonly minutes: number;
  readonly setUpChanges: number;
  /** Ids of checks and questions, in their order. */
  readonly checks: readonly string[];
  /** Minutes of work after the verdict: repairs, needless ones too, seeing whether it is gone, handing over. */
  readonly repairMinutes: number;
  readonly cured: boolean;
}

/**
 * Plays a simulated car to its verdict, then makes the repairs in their order until the complaint is gone.
 *
 * Who checks sees the car through `grounded`; the car answers from its own world, which may differ.
 */
export function playCase(
  grounded: Grounded,
  car: SimulatedCar,
  policy: Policy,
  stop: StopRule,
  options: PlayOptions,
): PlayedCase {
  return playUnder(grounded, car, policy, [stop], options)[0] as PlayedCase;
}

/**
 * As `playCase`, under several stop rules at once, aligned to them: what is checked next does not depend on when the search
 * ends, so the way is gone once and each rule ends it where it would.
 */
export function playUnder(
  grounded: Grounded,
  car: SimulatedCar,
  policy: Policy,
  stops: readonly StopRule[],
  options: PlayOptions,
): PlayedCase[] {
  const answers = beforeAnyCheck(grounded, car);
  const { who, lift, helper, only, notPossible, costs } = options;
  const checks: string[] = [];
  let setUp = options.setUp ?? grounded.knowledge.setUps.start;
  let minutes = 0;
  let setUpChanges = 0;
  const played = new Map<StopRule, PlayedCase>();
  const end = (stop: StopRule, verdict: Verdict): void => {
    played.set(stop, ended(grounded, car, verdict, costs, { minutes, setUpChanges, checks: checks.slice() }));
  };
  let open = stops;
  for (;;) {
    const now = weighing(grounded, answers);
    const proposed = proposeChecks(grounded, answers, now, {
      setUp,
      who,
      lift,
      helper,
      only,
      notPossible,
    });
    const situation: Situation = { grounded, answers, weighing: now, proposed, setUp, minutes };
    options.watch?.(situation, open);
    const out = minutes >= (options.mostMinutes ?? 400);
    for (const stop of open) {
      const verdict = out ? stop.atLast(situation) : stop.verdict(situation);
      if (verdict !== undefined) end(stop, verdict);
    }
    open = open.filter((stop) => !played.has(stop));
    const next = open.length > 0 ? policy.next(situation, options.uniform) : undefined;
    if (next === undefined) {
      for (const stop of open) end(stop, stop.atLast(situation));
      return stops.map((stop) => played.get(stop) as PlayedCase);
    }
    minutes += next.setUpMinutes;
    if (next.setUp !== setUp) setUpChanges += 1;
    setUp = next.setUp;
    for (const check of together(next, proposed, options.atOnce ?? 1)) {
      answers.push(...resultOf(car, check));
      checks.push(check.id);
      minutes += check.minutes;
    }
  }
}

/** What is known when the car comes in. */
function beforeAnyCheck(grounded: Grounded, car: SimulatedCar): Answer[] {
  const { contexts, complaints } = grounded.knowledge;
  const answers: Answer[] = [...car.told];
  const told = new Set(car.told.map((a) => a.finding));
  // What happened lately is part of the car's priors already: not asked again.
  for (const { id } of contexts) {
    if (!grounded.contexts.includes(id) && !told.has(id))
      answers.push({ finding: id, state: "absent", by: "report" });
  }
  // One complaint a case: a yes to a further one would make that one part of what is to be explained.
  for (const { id } of complaints) {
    if (!told.has(id)) answers.push({ finding: id, state: "unknown", by: "report" });
  }
  return answers;
}

/** The check and the best others of its set-up that settle something else: while each tells little, none waits for another. */
function together(
  next: ProposedCheck,
  proposed: readonly ProposedCheck[],
  atOnce: number,
): readonly ProposedCheck[] {
  const made = [next];
  if (next.gainBits >= TELLS_LITTLE) return made;
  const settled = new Set(next.settles.map((s) => s.finding));
  for (const check of proposed) {
    if (made.length >= atOnce) break;
    if (check.setUp !== next.setUp || check.settles.some((s) => settled.has(s.finding))) continue;
    made.push(check);
    for (const { finding } of check.settles) settled.add(finding);
  }
  return made;
}

function resultOf(car: SimulatedCar, next: ProposedCheck): Answer[] {
  const [first] = next.settles;
  return next.kind === "question" && first !== undefined
    ? [questionResult(car, first.finding)]
    : checkResult(car, next.settles);
}

function ended(
  grounded: Grounded,
  car: SimulatedCar,
  verdict: Verdict,
  costs: Costs,
  spent: Pick<PlayedCase, "minutes" | "setUpChanges" | "checks">,
): PlayedCase {
  const needed = new Map(firedSuspects(car).map((i) => [repairOf(grounded, i), i]));
  const unknown = car.leaked ? 1 : 0;
  const right = verdict.repair === undefined ? needed.size === 0 : needed.has(verdict.repair);
  const open = new Set(needed.keys());
  let repairMinutes = 0;
  for (const repair of verdict.order) {
    const suspect = needed.get(repair) ?? anySuspectOf(grounded, repair);
    repairMinutes += remedyCost(grounded, costs, suspect).minutes + costs.verifyMinutes;
    open.delete(repair);
    if (open.size + unknown === 0) break;
  }
  const cured = open.size + unknown === 0;
  return {
    ...spent,
    verdict,
    right,
    repairMinutes: repairMinutes + (cured ? 0 : costs.refer.minutes),
    cured,
  };
}

/** A suspect that the repair would have mended, the likeliest beforehand: what the needless work is like. */
function anySuspectOf(grounded: Grounded, repair: string): number {
  let best = -1;
  grounded.suspects.forEach((suspect, i) => {
    if (repairOf(grounded, i) !== repair) return;
    if (best < 0 || suspect.prior > (grounded.prior[best] ?? 0)) best = i;
  });
  return best;
}
