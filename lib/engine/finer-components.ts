import type { Component, Explanation } from "./core/index.ts";

/** Causes whose chances given each are worked out exactly; the core may hold it lower. */
const EXACT = 24;
/** Further causes and pairs of them, with chances that are near enough. */
const MOST_MORE = 24;
const SMALLEST_MORE = 0.002;

/** Proposing, deciding and batches all ask for them. */
const KEPT = new WeakMap<Explanation, readonly Component[]>();

/**
 * The core's components with further causes and pairs taken out of the rest, so that what a check could prove of them counts.
 *
 * Their rows are those with the target silent and the causes set to certain: exact but for what ties them to other suspects.
 */
export function finerComponents(explanation: Explanation): readonly Component[] {
  const made = KEPT.get(explanation) ?? finer(explanation);
  KEPT.set(explanation, made);
  return made;
}

function finer(explanation: Explanation): Component[] {
  const base = explanation.components(EXACT);
  const rest = base.find((c) => c.kind === "rest");
  const silent = base.find((c) => c.kind === "none")?.marginals;
  if (rest === undefined || silent === undefined) return [...base];
  const named = new Set(base.map((c) => c.set.join(" ")));
  const more = [
    ...Array.from(explanation.singles, (probability, i) => ({ set: [i], probability })),
    ...explanation.pairs.map(({ i, j, probability }) => ({ set: [i, j], probability })),
  ]
    .filter(({ set, probability }) => probability >= SMALLEST_MORE && !named.has(set.join(" ")))
    .sort((a, b) => b.probability - a.probability)
    .slice(0, MOST_MORE)
    .map(({ set, probability }): Component => {
      const marginals = silent.slice();
      for (const i of set) marginals[i] = 1;
      return { set, kind: "set", probability, marginals };
    });
  const others = base.filter((c) => c !== rest);
  const left = more.reduce((sum, c) => sum - c.probability, rest.probability);
  if (left <= 1e-12) return [...others, ...more];
  const row = rest.marginals.map((marginal, i) => {
    const mass = more.reduce(
      (sum, c) => sum - c.probability * (c.marginals[i] ?? 0),
      rest.probability * marginal,
    );
    return Math.min(1, Math.max(0, mass / left));
  });
  return [...others, ...more, { ...rest, probability: left, marginals: row }];
}
