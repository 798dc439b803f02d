import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type BrierParts, brierParts } from "../../lib/maths/brier.ts";
import type { SimulationOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import { reliabilityPlot } from "./reliability-plot.ts";
import type { CalibrationJob, CalibrationResult, Forecasts } from "./simulation-jobs.ts";
import { table } from "./timing.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const CASES_A_CAR = 10;
const PLOTTED = "explains the complaint, at the verdict";

/** `write` is the folder of the repository: the plot is then kept beside this file. */
interface CalibrationOptions extends SimulationOptions {
  readonly write?: string | undefined;
}

/** Of suspects given 70 to 80 %, how many are it? In the world of the knowledge, and in worlds that differ by its spread. */
export async function reliability({ cars = 2000, write }: CalibrationOptions = {}): Promise<string> {
  const parts: string[] = [];
  const plots: { title: string; bins: BrierParts["bins"] }[] = [];
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
      [PLOTTED, (r: CalibrationResult) => r.verdict],
      ["is there at all, at the verdict", (r: CalibrationResult) => r.present],
    ] as const) {
      const scores = scored(results.map(pick));
      parts.push(`${world}; ${cars} cars; ${title}`, deciles(scores));
      if (title === PLOTTED) {
        plots.push({ title: `${perturbed ? "Moved worlds" : "Own world"}: ${title}`, bins: scores.bins });
      }
    }
  }
  if (write !== undefined) {
    writeFileSync(join(write, "tests", "bench", "reliability.svg"), reliabilityPlot(plots));
  }
  return parts.join("\n");
}

/** Tenth in which a chance lies. */
const bin = (p: number): number => Math.min(9, Math.floor(10 * p));

function scored(all: readonly Forecasts[]): BrierParts {
  const forecasts = all.flatMap((f) => f.forecast);
  const cameTrue = all.flatMap((f) => f.cameTrue);
  return brierParts(forecasts, cameTrue, bin);
}

function deciles(parts: BrierParts): string {
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
