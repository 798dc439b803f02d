import { inferences } from "bayesjs";
import { checkGain, explain, marginalBounds, posterior } from "../../lib/engine/core/index.ts";
import { asGeneralNetwork } from "../support/as-general-network.ts";
import {
  answered,
  between,
  largeModel,
  openFindings,
  pick,
  seededUniform,
  smallModel,
} from "../support/random-models.ts";
import { milliseconds, quantile, table } from "./timing.ts";

/** Cases measured for each number of present findings. */
const CASES = 40;

/** One answer's work on a large random knowledge: explain the complaint, then the gain of 120 checks. */
export function wholeStep(): string {
  const rows = [4, 8, 12, 16, 20].map((present) => {
    const whole: number[] = [];
    const weigh: number[] = [];
    const costs: number[] = [];
    const residuals: number[] = [];
    let cut = 0;
    for (let seed = -10; seed < CASES; seed++) {
      const model = largeModel(seed + 1_000, present);
      const absent = between(seededUniform(seed + 7), [5, 40]);
      const { evidence, known } = answered(model, seed + 2_000, present, absent);
      const checks = model.checks.map((check) => openFindings(model, check, known));
      let explained = 0;
      const total = milliseconds(() => {
        const start = performance.now();
        const explanation = explain(evidence, [0]);
        explained = performance.now() - start;
        const components = explanation.components(12);
        const merged = Int32Array.from(components.keys());
        for (const findings of checks) checkGain(components, merged, findings);
        if (seed >= 0) {
          costs.push(explanation.planCost);
          residuals.push(explanation.residual);
          cut += explanation.approximate ? 1 : 0;
        }
      });
      // The first few warm the code up.
      if (seed >= 0) {
        whole.push(total);
        weigh.push(explained);
      }
    }
    return [
      present,
      quantile(weigh, 0.5),
      quantile(weigh, 0.95),
      quantile(whole, 0.5),
      quantile(whole, 0.95),
      Math.max(...whole),
      quantile(costs, 0.5),
      Math.max(...costs),
      cut,
      quantile(residuals, 0.5),
      quantile(residuals, 0.9),
    ];
  });
  return table(
    [
      "present",
      "explain med",
      "p95",
      "whole med ms",
      "p95",
      "max",
      "cost med",
      "max",
      "cut of 40",
      "residual med",
      "p90",
    ],
    rows,
  );
}

/** All marginals of a small network: the core beside bayesjs (junction tree and variable elimination). */
export function besideGeneralLibrary(): string {
  const rows = [8, 10, 12].map((suspects) => {
    const model = smallModel(suspects, {
      suspects: [suspects, suspects],
      positives: [5, 5],
      negatives: [3, 3],
      parents: [3, 4],
    });
    const { network, given } = asGeneralNetwork(model);
    const ids = Array.from(model.prior, (_, i) => `s${i}`);
    const byLibrary = (infer: typeof inferences.junctionTree.infer): number =>
      milliseconds(() => ids.forEach((id) => infer(network, { [id]: "T" }, given)));
    const tree = byLibrary(inferences.junctionTree.infer);
    const elimination = byLibrary(inferences.variableElimination.infer);
    const samples = Array.from({ length: 60 }, () => milliseconds(() => posterior(model)));
    const own = quantile(samples, 0.5);
    return [suspects, own, tree, elimination, Math.min(tree, elimination) / own];
  });
  return table(["suspects", "core ms", "junction tree ms", "elimination ms", "ratio to the faster"], rows);
}

/** Worst case: findings with 35 to 60 parents anywhere, so that nothing is local and links must be cut. */
export function withoutLocality(): string {
  const rows = [10, 12, 14, 16, 20, 24, 31, 45, 100, 300].map((present) => {
    const times: number[] = [];
    const cuts: number[] = [];
    const errors: number[] = [];
    const both: number[] = [];
    const widths: number[] = [];
    for (let seed = -2; seed < 8; seed++) {
      const uniform = seededUniform(seed + 100);
      const { prior } = largeModel(seed + 500, 0);
      const positives = Array.from({ length: present }, () => {
        const parents = pick(uniform, prior.length, between(uniform, [35, 60]));
        return {
          leak: 0.001 * 100 ** uniform(),
          parents,
          w: Float64Array.from(parents, () => 0.05 + 0.9 * uniform()),
        };
      });
      const evidence = { prior, negatives: [], positives };
      let result = posterior({ prior, negatives: [], positives: [] });
      const time = milliseconds(() => {
        result = posterior(evidence);
      });
      if (seed < 0) continue;
      times.push(time);
      let bounds = { low: prior, high: prior };
      // What a weighing beyond the budget takes in all.
      both.push(
        milliseconds(() => {
          explain(evidence, [0]);
          bounds = marginalBounds(evidence);
        }),
      );
      widths.push(bounds.high.reduce((sum, p, i) => sum + p - (bounds.low[i] ?? 0), 0) / prior.length);
      cuts.push(result.cuts);
      // The exact answer is within reach up to here.
      if (present <= 14) {
        const exact = posterior(evidence, { maxCost: Number.POSITIVE_INFINITY }).marginals;
        errors.push(Math.max(...result.marginals.map((p, i) => Math.abs(p - exact[i]!))));
      }
    }
    const worst = errors.length > 0 ? quantile(errors, 0.5) : "-";
    return [
      present,
      quantile(times, 0.5),
      Math.max(...times),
      quantile(cuts, 0.5),
      worst,
      quantile(both, 0.5),
      Math.max(...both),
      quantile(widths, 0.5),
    ];
  });
  return table(
    [
      "present",
      "posterior med ms",
      "max",
      "links cut med",
      "worst marginal error med",
      "explain + bounds med ms",
      "max",
      "mean width med",
    ],
    rows,
  );
}
