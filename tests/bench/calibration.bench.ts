import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "../../lib/knowledge/canonical.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { type ForecastSums, FORECASTS } from "./forecasts.ts";
import type { ResumableOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import { reliabilityPlot } from "./reliability-plot.ts";
import { type ReliableTenth, reliabilityTable, reliableTenths } from "./reliability-table.ts";
import type { CalibrationJob } from "./simulation-jobs.ts";
import { packSlices, resumed, sliceFiles } from "./slices.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const CASES_A_CAR = 10;

const PLOTTED = "verdict";

/** Of suspects given 70 to 80 %, how many are it? In the world of the knowledge, and in worlds that differ by its spread. */
export async function reliability({ cars = 2000, root, write }: ResumableOptions): Promise<string> {
  const parts: string[] = [];
  const plots: { title: string; bins: readonly ReliableTenth[] }[] = [];
  for (const perturbed of [false, true]) {
    const jobs = Array.from({ length: Math.ceil(cars / CASES_A_CAR) }, (_, k): CalibrationJob => {
      const left = Math.min(CASES_A_CAR, cars - k * CASES_A_CAR);
      return { kind: "calibration", seed: 500_000 + 7919 * k, cars: left, perturbed };
    });
    const name = perturbed ? "calibration-moved" : "calibration";
    const files = sliceFiles(root, name, canonicalJson(shippedKnowledge()));
    const results = await resumed<ForecastSums>(
      files,
      jobs,
      (some, progress) => workThrough(WORKER, name, some, progress),
      console.error,
    );
    if (write !== undefined) packSlices(files);
    const world = perturbed
      ? "Worlds whose strengths differ from the knowledge's by their spread"
      : "The world of the knowledge";
    for (const [key, title] of FORECASTS) {
      const clusters = results.map((r) => r[key]);
      parts.push(`${world}; ${cars} cars; ${title}`, reliabilityTable(clusters));
      if (key === PLOTTED)
        plots.push({
          title: `${perturbed ? "Moved worlds" : "Own world"}: ${title}`,
          bins: reliableTenths(clusters),
        });
    }
  }
  if (write !== undefined)
    writeFileSync(join(root, "tests", "bench", "reliability.svg"), reliabilityPlot(plots));
  return parts.join("\n");
}
