import type { Answer } from "../../lib/engine/index.ts";
import { proposeChecks, weighing } from "../../lib/engine/index.ts";
import type { Policy, StopRule, Verdict } from "../../lib/engine/policies/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import type { SmallInstance } from "./small-instance.ts";
import type { Way } from "./small-optimum.ts";

/** A policy of the engine with its stop rule, as a way of searching a small instance. */
export function engineWay(instance: SmallInstance, policy: Policy, stop: StopRule): Way {
  const { grounded, checks, repairs, setUps } = instance;
  const repaired = (verdict: Verdict): { repairs: number[] } => ({
    repairs: verdict.order.map((id) => repairs.indexOf(id)),
  });
  return (results, at) => {
    const answers: Answer[] = [{ finding: instance.complaint, state: "present", by: "report" }];
    results.forEach((r, j) => {
      const finding = checks[j]?.finding ?? "";
      if (r >= 0) answers.push({ finding, state: r === 1 ? "present" : "absent", by: "check" });
    });
    const now = weighing(grounded, answers);
    const setUp = setUps[at] ?? "";
    const proposed = proposeChecks(grounded, answers, now, { setUp, only: "checks" });
    const situation = { grounded, answers, weighing: now, proposed, setUp, minutes: 0 };
    const verdict = stop.verdict(situation);
    if (verdict !== undefined) return repaired(verdict);
    const next = policy.next(situation, seededUniform(results.length));
    const check = checks.findIndex((c) => c.id === next?.id);
    return check < 0 ? repaired(stop.atLast(situation)) : { check };
  };
}
