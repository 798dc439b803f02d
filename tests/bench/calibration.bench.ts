import { brierParts } from "../../lib/maths/brier.ts";
import type { SimulationOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import type { CalibrationJob, CalibrationResult, Forecasts } from "./simulation-jobs.ts";
import { table } from "./timing.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const CASES_A_CAR = 10;

/** Of suspects given 70 to 80 %, how many are it? In the world of the knowledge, and in worlds that differ by its spread. */
export async function reliability({ cars = 2000 }: SimulationOptions = {}): Promise<string> {
  const parts: string[] = [];
  for (const perturbed of [false, true]) {
    const jobs = Array.from({ length: Math.ceil(cars / CASES_A_CAR) }, (_, k): CalibrationJob => {
      const left = Math.min(CASES_A_CAR, cars - k * CASES_A_CAR);
      return { kind: "calibration", seed: 500_000 + 7919 * k, cars: left, perturbed };
    });
    const label = perturbed ? "calibration, world moved" : "calibration";
    const results = await workThrough<CalibrationResult>(WORKER, label, jobs);
    const world = perturbed
      ? "Worlds whose strengths differ from the knowledge's by their spread"
      : "The world of the knowledge";
    for (const [title, pick] of [
      ["explains the complaint, as told", (r: CalibrationResult) => r.told],
      ["explains the complaint, at the verdict", (r: CalibrationResult) => r.verdict],
      ["is there at all, at the verdict", (r: CalibrationResult) => r.present],
    ] as const) {
      parts.push(`${world}; ${cars} cars; ${title}`, deciles(results.map(pick)));
    }
  }
  return parts.join("\n");
}

function deciles(all: readonly Forecasts[]): string {
  const forecasts = all.flatMap((f) => f.forecast);
  const cameTrue = all.flatMap((f) => f.cameTrue);
  const bin = (p: number): number => Math.min(9, Math.floor(10 * p));
  const parts = brierParts(forecasts, cameTrue, bin);
  const rows = parts.bins.map((b) => [
    `${10 * bin(b.forecast)}-${10 * bin(b.forecast) + 10} %`,
    b.count,
    100 * b.forecast,
    100 * b.observed,
    100 * Math.sqrt((b.observed * (1 - b.observed)) / b.count),
  ]);
  const { score, reliability: rel, resolution, uncertainty, within, skill } = parts;
  return [
    table(["given", "suspects", "mean given %", "true %", "+-"], rows),
    `Brier ${score.toPrecision(4)} = reliability ${rel.toPrecision(3)} - resolution ${resolution.toPrecision(3)} + uncertainty ${uncertainty.toPrecision(3)} + within bins ${within.toPrecision(2)}; skill ${skill.toFixed(3)}`,
    "",
  ].join("\n");
}
