import type { BitWeights } from "./bit-weights.ts";
import { forcedWeights } from "./bit-weights.ts";
import type { Bit } from "./checked-evidence.ts";
import type { FoldedOdds } from "./folded-odds.ts";
import { impossibleEvidence } from "./folded-odds.ts";
import {
  closeBackward,
  closeForward,
  dot,
  faultBackward,
  faultForward,
  openBackward,
  openForward,
} from "./frontier.ts";
import type { GroupPlan, Home, Layout } from "./layout.ts";
import type { Step } from "./elimination-plan.ts";

/** Everything that the steps of a group need to be run. */
export interface GroupContext {
  readonly bits: readonly Bit[];
  readonly plan: Layout;
  readonly odds: FoldedOdds;
  readonly weights: BitWeights;
}

/** One group after its forward and backward pass, with the tables that conditioning reads. */
export interface GroupRun {
  readonly steps: readonly Step[];
  readonly logEvidence: number;
  /** Table before each step. */
  readonly before: readonly Float64Array[];
  /** For a fault step: alpha * (transposed links of the table that follows). For an open step: that table. */
  readonly after: readonly Float64Array[];
  /** Factor that each close step multiplies by, so that no table underflows. */
  readonly scale: Float64Array;
}

/** Effects of a group on the whole: written into arrays that all groups share. */
export interface GroupResults {
  /** P(present | E) of heavy suspects. */
  readonly marginals: Float64Array;
  /** Derivative of log P(E) to the unexplained and the explained weight of each finding. */
  readonly du: Float64Array;
  readonly de: Float64Array;
}

/**
 * Runs one group forward and backward.
 *
 * Errors: impossible-evidence when no state can produce the answers.
 */
export function runGroup(group: GroupPlan, context: GroupContext, results: GroupResults): GroupRun {
  const { bits, odds, weights } = context;
  const { steps } = group;
  const before: Float64Array[] = [];
  const scale = new Float64Array(steps.length).fill(1);
  let logEvidence = 0;
  let table: Float64Array = Float64Array.of(1);
  steps.forEach((step, t) => {
    before.push(table);
    if (step.kind === "open") {
      table = openForward(table, weights.u[step.bit] as number, weights.e[step.bit] as number);
    } else if (step.kind === "fault") {
      const alpha = odds.alpha[step.fault] as number;
      table = faultForward(table, step.positions, step.w, alpha, odds.beta[step.fault] as number);
    } else {
      const { ifAbsent, ifPresent } = bits[step.bit] as Bit;
      table = closeForward(table, step.position, ifAbsent, ifPresent);
      const sum = table.reduce((total, value) => total + value, 0);
      if (!(sum > 0)) throw impossibleEvidence("present");
      scale[t] = 1 / sum;
      logEvidence += Math.log(sum);
      for (let s = 0; s < table.length; s++) table[s] = (table[s] as number) / sum;
    }
  });
  // Every group ends by closing its last finding, so the last table is the single value 1.
  const after: Float64Array[] = new Array<Float64Array>(steps.length);
  let back: Float64Array = Float64Array.of(1);
  for (let t = steps.length - 1; t >= 0; t--) {
    const step = steps[t] as Step;
    const table = before[t] as Float64Array;
    if (step.kind === "open") {
      after[t] = back;
      results.du[step.bit] = dot(back, table);
      results.de[step.bit] = dot(back, table, table.length);
      back = openBackward(back, weights.u[step.bit] as number, weights.e[step.bit] as number);
    } else if (step.kind === "fault") {
      const links = faultBackward(back, step.positions, step.w, odds.alpha[step.fault] as number);
      after[t] = links;
      results.marginals[step.fault] = dot(links, table);
      back = passed(back, odds.beta[step.fault] as number, links);
    } else {
      back = closeStepBack(back, step, bits, scale[t] as number);
    }
  }
  return { steps, logEvidence, before, after, scale };
}

/** beta * back + links: the table before a suspect that may or may not be present. */
function passed(back: Float64Array, beta: number, links: Float64Array): Float64Array {
  const next = new Float64Array(back.length);
  for (let s = 0; s < next.length; s++) next[s] = beta * (back[s] as number) + (links[s] as number);
  return next;
}

function closeStepBack(
  back: Float64Array,
  step: Extract<Step, { kind: "close" }>,
  bits: readonly Bit[],
  scale: number,
): Float64Array {
  const { ifAbsent, ifPresent } = bits[step.bit] as Bit;
  return closeBackward(back, step.position, scale * ifAbsent, scale * ifPresent);
}

/**
 * Joint probabilities P(j present, the suspect dealt with at a step present | E), written into `joint`.
 *
 * The suspect is the step's own fault, or, at an open step, one absorbed by that finding.
 */
export function conditionGroup(
  run: GroupRun,
  context: GroupContext,
  at: number,
  suspect: number,
  joint: Float64Array,
): void {
  const { plan, odds, weights } = context;
  const start = run.steps[at] as Step;
  let table = run.before[at] as Float64Array;
  let back: Float64Array;
  if (start.kind === "fault") {
    back = run.after[at] as Float64Array;
    table = faultForward(table, start.positions, start.w, odds.alpha[suspect] as number, 0);
  } else {
    const home = plan.homes[suspect] as Extract<Home, { kind: "absorbed" }>;
    const forced = forcedWeights(
      odds.alpha[suspect] as number,
      odds.beta[suspect] as number,
      home.w,
      weights.u[start.bit] as number,
      weights.e[start.bit] as number,
    );
    back = openBackward(run.after[at] as Float64Array, forced.u, forced.e);
    table = openForward(table, forced.u, forced.e);
  }
  conditionLater(run, context, at, table, joint);
  conditionEarlier(run, context, at, back, joint);
}

function conditionLater(
  run: GroupRun,
  context: GroupContext,
  at: number,
  start: Float64Array,
  joint: Float64Array,
): void {
  const { bits, odds, weights } = context;
  let table = start;
  for (let t = at + 1; t < run.steps.length; t++) {
    const step = run.steps[t] as Step;
    if (step.kind === "open") {
      const after = run.after[t] as Float64Array;
      shareAbsorbed(context, step.bit, dot(after, table), dot(after, table, table.length), joint);
      table = openForward(table, weights.u[step.bit] as number, weights.e[step.bit] as number);
    } else if (step.kind === "fault") {
      joint[step.fault] = dot(run.after[t] as Float64Array, table);
      const alpha = odds.alpha[step.fault] as number;
      table = faultForward(table, step.positions, step.w, alpha, odds.beta[step.fault] as number);
    } else {
      const { ifAbsent, ifPresent } = bits[step.bit] as Bit;
      const scale = run.scale[t] as number;
      table = closeForward(table, step.position, scale * ifAbsent, scale * ifPresent);
    }
  }
}

function conditionEarlier(
  run: GroupRun,
  context: GroupContext,
  at: number,
  start: Float64Array,
  joint: Float64Array,
): void {
  const { bits, odds, weights } = context;
  let back = start;
  for (let t = at - 1; t >= 0; t--) {
    const step = run.steps[t] as Step;
    const table = run.before[t] as Float64Array;
    if (step.kind === "open") {
      shareAbsorbed(context, step.bit, dot(back, table), dot(back, table, table.length), joint);
      back = openBackward(back, weights.u[step.bit] as number, weights.e[step.bit] as number);
    } else if (step.kind === "fault") {
      const links = faultBackward(back, step.positions, step.w, odds.alpha[step.fault] as number);
      joint[step.fault] = dot(links, table);
      back = passed(back, odds.beta[step.fault] as number, links);
    } else {
      back = closeStepBack(back, step, bits, run.scale[t] as number);
    }
  }
}

/** Probabilities of the suspects absorbed by a finding, from the finding's two derivatives. */
export function shareAbsorbed(
  context: GroupContext,
  bit: number,
  du: number,
  de: number,
  out: Float64Array,
  weights: { readonly u: number; readonly e: number } = {
    u: context.weights.u[bit] as number,
    e: context.weights.e[bit] as number,
  },
): void {
  const { plan, odds } = context;
  for (const fault of plan.absorbed[bit] as readonly number[]) {
    const home = plan.homes[fault] as Extract<Home, { kind: "absorbed" }>;
    const alpha = odds.alpha[fault] as number;
    const forced = forcedWeights(alpha, odds.beta[fault] as number, home.w, weights.u, weights.e);
    out[fault] = forced.u * du + forced.e * de;
  }
}
