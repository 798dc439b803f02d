import type { NegativeFactor, PositiveBit } from "./core/index.ts";
import type { ObservationNode } from "./observation-nodes.ts";

/** How much a told answer weighs: factor on strengths, and chance of being told although it is not there. */
export interface Trust {
  readonly reliability: number;
  readonly falseAlarm: number;
}

/** A grade that was answered: at least `from`, and not as much as `below` (grades counted from 0; -1 is "none"). */
export interface GradeAnswer {
  /** Lowest grade that holds; -1 when it is absent altogether. */
  readonly from: number;
  /** First grade that does not hold; undefined when nothing bounds it from above. */
  readonly below: number | undefined;
}

/**
 * An answered observation as factors for the core.
 *
 * Grades are nested, X = max over causes, so P(X < below) is a product (a negative factor), and P(X >= from | X < below)
 * is a noisy-OR with strengths (s_from - s_below) / (1 - s_below): exact, one bit whatever the number of grades.
 */
export function observationEvidence(
  node: ObservationNode,
  answer: GradeAnswer,
  trust: Trust,
): { negative?: NegativeFactor; positive?: PositiveBit } {
  const at = (level: number): { w: Float64Array; leak: number } => ({
    w: Float64Array.from(node.strengths[level] ?? [], (s) => s * trust.reliability),
    leak: 1 - (1 - (node.leak[level] ?? 0)) * (1 - trust.falseAlarm),
  });
  const out: { negative?: NegativeFactor; positive?: PositiveBit } = {};
  const bound =
    answer.below === undefined || answer.below >= node.strengths.length ? undefined : at(answer.below);
  if (bound !== undefined) {
    out.negative = {
      leakQ: 1 - bound.leak,
      parents: node.parents,
      q: Float64Array.from(bound.w, (w) => 1 - w),
    };
  }
  if (answer.from >= 0) {
    const { w, leak } = at(answer.from);
    out.positive =
      bound === undefined
        ? { leak, parents: node.parents, w }
        : {
            leak: (leak - bound.leak) / (1 - bound.leak),
            parents: node.parents,
            w: Float64Array.from(w, (s, k) => (s - (bound.w[k] ?? 0)) / (1 - (bound.w[k] ?? 0))),
          };
  }
  return out;
}
