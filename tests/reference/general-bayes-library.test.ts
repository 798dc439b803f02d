import { inferences } from "bayesjs";
import { describe, expect, it } from "vitest";
import { posterior } from "../../lib/engine/core/index.ts";
import { asGeneralNetwork } from "../support/as-general-network.ts";
import { smallModel } from "../support/random-models.ts";

/*
 * Oracle: bayesjs 0.6.5, a general-purpose library for exact inference in Bayesian networks. It is given full
 * tables and knows nothing of noisy-OR. Its junction tree and its variable elimination are both asked.
 */
const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

describe("the core against a general-purpose library", () => {
  it.each(seeds)("agrees on every posterior of 10 to 12 suspects, network %i", (seed) => {
    const model = smallModel(seed, {
      suspects: [10, 12],
      positives: [3, 5],
      negatives: [2, 3],
      parents: [2, 4],
    });
    const { network, given } = asGeneralNetwork(model);
    const { marginals } = posterior(model);
    marginals.forEach((p, i) => {
      const asked = { [`s${i}`]: "T" };
      expect(Math.abs(p - inferences.junctionTree.infer(network, asked, given)), `suspect ${i}`).toBeLessThan(
        1e-9,
      );
    });
    const first = { s0: "T" };
    const eliminated = inferences.variableElimination.infer(network, first, given);
    expect(Math.abs(marginals[0]! - eliminated)).toBeLessThan(1e-9);
  });
});
