import { bitWeights, forcedWeights } from "./bit-weights.ts";
import { type Bit, checkedEvidence } from "./checked-evidence.ts";
import type { CoreOptions, Evidence } from "./evidence.ts";
import { type FoldedOdds, foldedOdds, impossibleEvidence } from "./folded-odds.ts";
import { conditionGroup, type GroupContext, type GroupRun, runGroup, shareAbsorbed } from "./group-run.ts";
import type { Layout } from "./layout.ts";
import { affordableLayout } from "./affordable-layout.ts";
import { firedOn } from "./fired-on.ts";

/** Probability of the evidence and of every suspect. */
export interface Posterior {
  /** Natural log of P(E); a lower bound when links were cut and no answer is unreliable. */
  readonly logEvidence: number;
  /** P(suspect present | E). */
  readonly marginals: Float64Array;
  /** True when links were cut to stay within the cost. */
  readonly approximate: boolean;
  readonly cuts: number;
  /** Sum over suspects of 2^open * (links + 2): known before the run, and in proportion to its time. */
  readonly planCost: number;
}

/** Who showed one positive finding. */
export interface LinkFired {
  /** P(link fired | E), aligned to the finding's parents. */
  readonly links: Float64Array;
  /** P(the leak fired | E). */
  readonly leak: number;
}

/** A posterior that keeps what conditioning and attribution need. */
export interface Run extends Posterior {
  /**
   * P(each suspect present | E, suspect i present).
   *
   * Errors: impossible-evidence when suspect i has probability 0.
   */
  condition(i: number): Float64Array;
  /** P(link fired | E) of every parent of positive finding k, and of its leak. */
  linkFired(k: number): LinkFired;
  /** P(at least one link to these positive findings fired | E) of every suspect. */
  anyFired(targets: readonly number[]): Float64Array;
}

/** Exact posterior of every suspect; see Run for what else a run can tell. */
export function posterior(evidence: Evidence, options: CoreOptions = {}): Posterior {
  const { logEvidence, marginals, approximate, cuts, planCost } = run(evidence, options);
  return { logEvidence, marginals, approximate, cuts, planCost };
}

/**
 * Weighs evidence by the frontier programme; beyond options.maxCost it cuts the weakest links.
 *
 * Errors: empty-model, probability-out-of-range, bad-request, impossible-evidence.
 */
export function run(evidence: Evidence, options: CoreOptions = {}): Run {
  const { prior, negatives, bits } = checkedEvidence(evidence);
  const odds = foldedOdds(prior, negatives);
  const active = bits.map((_, k) => k);
  return runLayout(bits, affordableLayout(bits, active, odds.alpha, options.maxCost), odds);
}

/** Runs a plan with given odds; the odds may differ from those that the plan was made with. */
export function runLayout(bits: readonly Bit[], plan: Layout, odds: FoldedOdds): Run {
  const weights = bitWeights(bits, plan, odds);
  const context: GroupContext = { bits, plan, odds, weights };
  const marginals = odds.alpha.slice();
  const du = new Float64Array(bits.length);
  const de = new Float64Array(bits.length);
  let logEvidence = odds.logFactor;
  const groups: GroupRun[] = plan.groups.map((group) => runGroup(group, context, { marginals, du, de }));
  for (const group of groups) logEvidence += group.logEvidence;
  for (const k of plan.active) {
    if (!plan.opens[k]) {
      const { ifAbsent, ifPresent } = bits[k] as Bit;
      const total = ifAbsent * (weights.u[k] as number) + ifPresent * (weights.e[k] as number);
      if (!(total > 0)) throw impossibleEvidence("present");
      logEvidence += Math.log(total);
      du[k] = ifAbsent / total;
      de[k] = ifPresent / total;
    }
    shareAbsorbed(context, k, du[k] as number, de[k] as number, marginals);
  }
  // Rounding may leave a sure suspect a hair above 1.
  for (let i = 0; i < marginals.length; i++) marginals[i] = Math.min(1, marginals[i] as number);

  const condition = (i: number): Float64Array => {
    const joint = marginals.slice();
    const present = marginals[i];
    if (present === undefined || !(present > 0)) throw impossibleEvidence("suspect");
    const home = plan.homes[i];
    let changed: readonly number[] = [];
    if (home?.kind === "heavy") {
      changed = conditionIn(home.group, home.step, i, joint);
    } else if (home?.kind === "absorbed") {
      const opens = plan.opens[home.bit];
      if (opens) changed = conditionIn(opens.group, opens.step, i, joint);
      const forced = forcedWeights(
        odds.alpha[i] as number,
        odds.beta[i] as number,
        home.w,
        weights.u[home.bit] as number,
        weights.e[home.bit] as number,
      );
      shareAbsorbed(context, home.bit, du[home.bit] as number, de[home.bit] as number, joint, forced);
      if (!opens) changed = plan.absorbed[home.bit] as readonly number[];
    }
    for (const j of changed) joint[j] = Math.min(1, (joint[j] as number) / present);
    joint[i] = 1;
    return joint;
  };

  const conditionIn = (group: number, step: number, suspect: number, joint: Float64Array): number[] => {
    const groupRun = groups[group] as GroupRun;
    conditionGroup(groupRun, context, step, suspect, joint);
    return groupRun.steps.flatMap((each) =>
      each.kind === "fault"
        ? [each.fault]
        : each.kind === "open"
          ? (plan.absorbed[each.bit] as readonly number[])
          : [],
    );
  };

  return {
    logEvidence,
    marginals,
    approximate: plan.cuts.length > 0,
    cuts: plan.cuts.length,
    planCost: plan.cost,
    condition,
    linkFired: (k) => {
      const { parents, leak } = bits[k] as Bit;
      const fired = firedOn(context, groups, de, [k]);
      return { links: Float64Array.from(parents, (i) => fired[i] as number), leak: leak * (de[k] as number) };
    },
    anyFired: (targets) => firedOn(context, groups, de, targets),
  };
}
