import type { Answer } from "./answers.ts";
import { placedChecks } from "./check-places.ts";
import type { CheckFinding } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import { type JointResult, jointGain, noResult, resultChances, splitResults } from "./joint-results.ts";
import { type Outlook, repairOutlook } from "./outlook.ts";
import { type ProposedCheck, proposeChecks, type ProposeOptions } from "./propose.ts";
import { workshopCosts } from "./repair-cost.ts";
import type { Weighing } from "./weigh.ts";

/** A check of a batch, with what it adds to those before it. */
export interface BatchedCheck {
  readonly check: ProposedCheck;
  readonly addsBits: number;
}

/** The handful of checks worth doing in one set-up, before the car is moved again. */
export interface Batch {
  readonly setUp: string;
  /** Minutes to bring the car into it, once. */
  readonly setUpMinutes: number;
  /** Minutes of the checks themselves. */
  readonly minutes: number;
  /** What they are expected to tell together, in bits: less than the sum, as they overlap. */
  readonly gainBits: number;
  readonly checks: readonly BatchedCheck[];
}

/** A batch with what its results would leave, for weighing it against repairing now. */
export interface ForeseenBatch extends Batch {
  readonly results: readonly JointResult[];
}

/** Options of a batch: those of single checks, and how many. */
export interface BatchOptions extends ProposeOptions {
  /** Most checks in the list; 5 when left out. */
  readonly most?: number | undefined;
}

/** A check that adds less than this to those before it is left out. */
const WORTH_ADDING = 0.03;
/** Checks looked at in each set-up. */
const CANDIDATES = 12;

/**
 * The checks worth doing in one set-up, in order, with what they tell together: the set-up whose batch tells most a minute,
 * getting there included.
 *
 * Greedy: each next check is the one that adds most a minute to those before it, until none adds enough. Undefined when
 * there is nothing to explain or no check is worth it.
 */
export function proposeBatch(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: BatchOptions = {},
): Batch | undefined {
  const outlook = repairOutlook(grounded, weighing, workshopCosts(grounded.knowledge));
  if (outlook === undefined) return undefined;
  const proposed = proposeChecks(grounded, answers, weighing, {
    ...options,
    only: "checks",
    limit: undefined,
  });
  const batches = [...foreseenBatches(grounded, answers, proposed, outlook, options.most ?? 5)];
  const rate = (b: Batch): number => b.gainBits / (b.minutes + b.setUpMinutes);
  const best = batches.reduce<ForeseenBatch | undefined>(
    (top, b) => (top === undefined || rate(b) > rate(top) ? b : top),
    undefined,
  );
  if (best === undefined) return undefined;
  const { results: _, ...batch } = best;
  return batch;
}

/** The batch of every set-up that has a check worth doing, in the order of the best single check; worked out one by one. */
export function* foreseenBatches(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: readonly ProposedCheck[],
  outlook: Outlook,
  most: number,
): Generator<ForeseenBatch> {
  const checks = proposed.filter((p) => p.kind === "check");
  for (const setUp of new Set(checks.map((p) => p.setUp))) {
    const own = checks.filter((p) => p.setUp === setUp);
    const batch = greedy(grounded, answers, own, outlook, most);
    if (batch !== undefined) yield batch;
  }
}

function greedy(
  grounded: Grounded,
  answers: readonly Answer[],
  checks: readonly ProposedCheck[],
  outlook: Outlook,
  most: number,
): ForeseenBatch | undefined {
  const { components, values } = outlook;
  const settled = new Set(answers.flatMap((a) => (a.by === "check" ? [a.finding] : [])));
  let results = noResult(components);
  let gain = 0;
  const chosen: BatchedCheck[] = [];
  // What a check added before bounds what it adds later, near enough: only the first in line is worked out anew.
  const line = checks
    .slice(0, CANDIDATES)
    .map((check) => ({ check, adds: check.gainBits, at: -1, results: [] as JointResult[] }));
  while (chosen.length < most && line.length > 0) {
    line.sort((a, b) => b.adds / b.check.minutes - a.adds / a.check.minutes);
    const first = line[0];
    if (first === undefined) break;
    if (first.at < chosen.length) {
      const findings = openFindings(grounded, first.check, settled);
      first.at = chosen.length;
      first.results =
        findings.length === 0 ? results : splitResults(results, resultChances(components, findings));
      first.adds = jointGain(first.results, values) - gain;
      if (first.adds < WORTH_ADDING) line.shift();
      continue;
    }
    line.shift();
    results = first.results;
    gain += first.adds;
    chosen.push({ check: first.check, addsBits: first.adds });
    for (const { finding } of first.check.settles) settled.add(finding);
  }
  const [lead] = chosen;
  if (lead === undefined) return undefined;
  return {
    setUp: lead.check.setUp,
    setUpMinutes: lead.check.setUpMinutes,
    minutes: chosen.reduce((sum, c) => sum + c.check.minutes, 0),
    gainBits: gain,
    checks: chosen,
    results,
  };
}

/** The findings of a check that are still open, as the core reads them; the list itself while all are. */
export function openFindings(
  grounded: Grounded,
  proposed: ProposedCheck,
  settled: ReadonlySet<string>,
): readonly CheckFinding[] {
  const placed = placedChecks(grounded).find((p) => p.id === proposed.id);
  if (placed === undefined) return [];
  if (placed.nodes.every((n) => !settled.has(n.id))) return placed.findings;
  return placed.findings.filter((_, k) => !settled.has(placed.nodes[k]?.id ?? ""));
}
