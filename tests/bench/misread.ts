import { misfit, type AnswerFit } from "../../lib/engine/doubt/misfit.ts";
import { type Answer, groundCar, weigh } from "../../lib/engine/index.ts";
import { byExpectedCost, playCase, shippedChoice } from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import type { MisreadJob, MisreadRow } from "./simulation-jobs.ts";

/** Cases played to their verdict with every answer right, and the same with one check's result turned round. */
export function misread(job: MisreadJob): MisreadRow[] {
  const knowledge = shippedKnowledge();
  const costs = workshopCosts(knowledge);
  const grounded = groundCar(knowledge, anyCarOnTheRoad(knowledge, job.seed));
  const uniform = seededUniform(job.seed + 3);
  const stop = byExpectedCost(costs);
  const rows: MisreadRow[] = [];
  for (let k = 0; k < job.cars; k++) {
    const drawn = drawCar(grounded, uniform);
    let answers: readonly Answer[] = [];
    playCase(grounded, drawn, shippedChoice, stop, {
      costs,
      uniform,
      watch: (situation) => {
        answers = [...situation.answers];
      },
    });
    const checked = answers.filter((a) => a.by === "check");
    const right = weigh(grounded, answers);
    const consistent = misfit(grounded, answers, right);
    const row = {
      checks: checked.length,
      right: strongest(consistent.answers),
      conflict: consistent.conflict,
    };
    const wrong = checked[Math.floor(uniform() * checked.length)];
    if (wrong === undefined) {
      rows.push(row);
      continue;
    }
    const turned = answers.map((a) => (a === wrong ? turn(a) : a));
    const after = weigh(grounded, turned);
    const { answers: fits, conflict } = misfit(grounded, turned, after);
    const by = (measure: (fit: AnswerFit) => number): number =>
      1 +
      fits.filter((f) => measure(f) > measure(fits.find((g) => g.finding === wrong.finding) as AnswerFit))
        .length;
    rows.push({
      ...row,
      turned: {
        to: wrong.state === "present" ? "absent" : "present",
        misleads: after.ranking[0]?.suspect.id !== right.ranking[0]?.suspect.id,
        rankBySurprise: by((f) => -f.givenOthers),
        rankByConflict: by((f) => f.conflict),
        surprise: strongest(fits).surprise,
        strongestConflict: strongest(fits).conflict,
        conflict,
      },
    });
  }
  return rows;
}

function strongest(fits: readonly AnswerFit[]): { readonly surprise: number; readonly conflict: number } {
  return {
    surprise: fits.reduce((most, f) => Math.max(most, -Math.log2(f.givenOthers)), 0),
    conflict: fits.reduce((most, f) => Math.max(most, f.conflict), Number.NEGATIVE_INFINITY),
  };
}

/** The opposite result; a grade gives way to none, none to the first grade. */
function turn({ finding, by, state }: Answer): Answer {
  return { finding, by, state: state === "present" ? "absent" : "present" };
}
