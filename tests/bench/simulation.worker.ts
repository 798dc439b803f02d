import { parentPort } from "node:worker_threads";
import { calibrate } from "./calibrate.ts";
import { misread } from "./misread.ts";
import { againstOptimum } from "./play-optimum.ts";
import { playPolicies } from "./play-policies.ts";
import { reach } from "./reach.ts";
import type { SimulationJob } from "./simulation-jobs.ts";

parentPort?.on("message", (job: SimulationJob) => {
  parentPort?.postMessage(work(job));
});

function work(job: SimulationJob): unknown {
  switch (job.kind) {
    case "policies":
      return playPolicies(job);
    case "calibration":
      return calibrate(job);
    case "reach":
      return reach(job);
    case "optimum":
      return againstOptimum(job);
    case "misread":
      return misread(job);
  }
}
