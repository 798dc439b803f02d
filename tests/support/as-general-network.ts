import type { ICombinations, INetwork } from "bayesjs";
import type { Evidence } from "../../lib/engine/core/index.ts";

/** A model as a general Bayesian network with full tables, for the general-purpose library bayesjs. */
export interface GeneralNetwork {
  readonly network: INetwork;
  readonly given: ICombinations;
}

/**
 * Writes suspects as roots and answered findings as children with 2^parents rows.
 *
 * Unreliable answers are not written: give models without them.
 */
export function asGeneralNetwork({ prior, negatives, positives }: Evidence): GeneralNetwork {
  const network: INetwork = {};
  const given: ICombinations = {};
  prior.forEach((p, i) => {
    network[`s${i}`] = { id: `s${i}`, states: ["T", "F"], parents: [], cpt: { T: p, F: 1 - p } };
  });
  const child = (id: string, leakQ: number, parents: Int32Array, q: Float64Array, answer: string): void => {
    const names = Array.from(parents, (i) => `s${i}`);
    given[id] = answer;
    if (names.length === 0) {
      network[id] = { id, states: ["T", "F"], parents: [], cpt: { T: 1 - leakQ, F: leakQ } };
      return;
    }
    const cpt = Array.from({ length: 2 ** names.length }, (_, row) => {
      let absent = leakQ;
      const when: Record<string, string> = {};
      names.forEach((name, at) => {
        const present = ((row >> at) & 1) === 1;
        when[name] = present ? "T" : "F";
        if (present) absent *= q[at]!;
      });
      return { when, then: { T: 1 - absent, F: absent } };
    });
    network[id] = { id, states: ["T", "F"], parents: names, cpt };
  };
  negatives.forEach(({ leakQ, parents, q }, k) => child(`n${k}`, leakQ, parents, q, "F"));
  positives.forEach(({ leak, parents, w }, k) =>
    child(
      `p${k}`,
      1 - leak,
      parents,
      w.map((strength) => 1 - strength),
      "T",
    ),
  );
  return { network, given };
}
