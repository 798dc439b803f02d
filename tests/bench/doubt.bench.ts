import { steadiness } from "../../lib/engine/doubt/steadiness.ts";
import { misfit } from "../../lib/engine/doubt/misfit.ts";
import { groundCar, weigh } from "../../lib/engine/index.ts";
import { checkResult, drawCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import type { SimulationOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import type { MisreadJob, MisreadRow } from "./simulation-jobs.ts";
import { mean } from "./statistics.ts";
import { milliseconds, quantile, table } from "./timing.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const CASES_A_CAR = 10;
const TIMED = 30;

/** Time that 200 draws of steadiness, and leaving out each answer, take; by how many checks were made. */
export function doubtTimes(): string {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, { drive: "front", front: { layout: "strut" }, odometerKm: 140_000 });
  const nodes = [...grounded.nodes.values()];
  const rows = [0, 3, 6, 12].map((checks) => {
    const steady: number[] = [];
    const fits: number[] = [];
    for (let seed = 0; seed < TIMED; seed++) {
      const uniform = seededUniform(9_000 + seed);
      const car = drawCar(grounded, uniform);
      const settled = Array.from({ length: checks }, () => nodes[Math.floor(uniform() * nodes.length)]);
      const results = settled.flatMap((node) =>
        node === undefined ? [] : checkResult(car, [{ finding: node.id, levels: node.observation.levels }]),
      );
      const answers = [...car.told, ...results];
      const weighed = weigh(grounded, answers);
      steady.push(milliseconds(() => steadiness(grounded, answers, weighed, { uniform })));
      fits.push(milliseconds(() => misfit(grounded, answers, weighed)));
    }
    return [checks, quantile(steady, 0.5), quantile(steady, 0.95), quantile(fits, 0.5), quantile(fits, 0.95)];
  });
  return table(["checks", "steadiness med ms", "p95", "misfit med ms", "p95"], rows);
}

/** One check of each case is turned round: how often is it named first, and how often is one named although all are right? */
export async function misreadAnswers({ cars = 600 }: SimulationOptions = {}): Promise<string> {
  const jobs = Array.from({ length: Math.ceil(cars / CASES_A_CAR) }, (_, k): MisreadJob => {
    return {
      kind: "misread",
      seed: 700_000 + 7919 * k,
      cars: Math.min(CASES_A_CAR, cars - k * CASES_A_CAR),
    };
  });
  const rows = (await workThrough<MisreadRow[]>(WORKER, "misread", jobs)).flat();
  const { falseAlarms = 0.05, bits = 0 } = shippedKnowledge().doubt?.lookAgain ?? {};
  const bounds = {
    surprise: quantile(
      rows.map((r) => r.right.surprise),
      1 - falseAlarms,
    ),
    conflict: quantile(
      rows.map((r) => r.right.conflict),
      1 - falseAlarms,
    ),
    whole: quantile(
      rows.map((r) => r.conflict),
      1 - falseAlarms,
    ),
  };
  const turned = rows.flatMap((r) => (r.turned === undefined ? [] : [r.turned]));
  const kinds = [
    ["any result", turned],
    ["turned to found", turned.filter((t) => t.to === "present")],
    ["turned to not found", turned.filter((t) => t.to === "absent")],
    ["changes who leads", turned.filter((t) => t.misleads)],
    [
      "changes who leads, 3 checks and more",
      rows.filter((r) => r.checks >= 3).flatMap((r) => (r.turned?.misleads ? [r.turned] : [])),
    ],
  ] as const;
  const share = (list: readonly unknown[], all: readonly unknown[]): number =>
    (100 * list.length) / all.length;
  const lines = kinds.map(([name, of]) => [
    name,
    of.length,
    share(
      of.filter((t) => t.rankBySurprise === 1),
      of,
    ),
    share(
      of.filter((t) => t.rankBySurprise <= 2),
      of,
    ),
    share(
      of.filter((t) => t.rankByConflict === 1),
      of,
    ),
    share(
      of.filter((t) => t.surprise > bounds.surprise),
      of,
    ),
    share(
      of.filter((t) => t.rankBySurprise === 1 && t.surprise > bounds.surprise),
      of,
    ),
    share(
      of.filter((t) => t.rankByConflict === 1 && t.strongestConflict > bounds.conflict),
      of,
    ),
    share(
      of.filter((t) => t.conflict > bounds.whole),
      of,
    ),
  ]);
  return [
    `${rows.length} cases, ${mean(rows.map((r) => r.checks)).toFixed(1)} checks each; with every answer right, ${100 * falseAlarms} % have an answer of more than ${bounds.surprise.toFixed(2)} bits of surprise (stated: ${bits}), more than ${bounds.conflict.toFixed(2)} bits of conflict, or ${bounds.whole.toFixed(2)} bits of conflict of the whole.`,
    `False alarms at the stated bound: ${share(
      rows.filter((r) => r.right.surprise >= bits),
      rows,
    ).toFixed(1)} %.`,
    table(
      [
        "turned round",
        "cases",
        "first %",
        "in 2 %",
        "first by conflict %",
        "alarm %",
        "alarm and first %",
        "by conflict %",
        "whole %",
      ],
      lines,
    ),
  ].join("\n");
}
