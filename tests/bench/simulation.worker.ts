import { parentPort } from "node:worker_threads";
import { playPolicies } from "./play-policies.ts";
import type { SimulationJob } from "./simulation-jobs.ts";

parentPort?.on("message", (job: SimulationJob) => {
  parentPort?.postMessage(work(job));
});

function work(job: SimulationJob): unknown {
  switch (job.kind) {
    case "policies":
      return playPolicies(job);
    default:
      throw new Error(`no such job: ${job.kind}`);
  }
}
