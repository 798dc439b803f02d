import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import type { SimulationOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import type { ReachJob, ReachRow } from "./simulation-jobs.ts";
import { mean } from "./statistics.ts";
import { table } from "./timing.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const WORST = 40;

/** Cases from every fault, spread evenly: how often the search ends with the right part, and which faults do worst. */
export async function reachability({ cars = 2000 }: SimulationOptions = {}): Promise<string> {
  const faults = shippedKnowledge().faults.map((f) => f.id);
  const cases = Math.max(1, Math.ceil(cars / faults.length));
  const jobs = faults.map((fault, k): ReachJob => {
    return { kind: "reach", seed: 900_000 + 104_729 * k, faults: [fault], cases };
  });
  // In random order, so that the time left is told well.
  const uniform = seededUniform(1);
  const order = jobs.map((job) => ({ job, at: uniform() })).sort((a, b) => a.at - b.at);
  const rows = (
    await workThrough<ReachRow[]>(
      WORKER,
      "reachability",
      order.map((o) => o.job),
    )
  ).flat();
  const played = rows.filter((r) => r.cases > 0);
  const total = played.reduce((sum, r) => sum + r.cases, 0);
  const right = played.reduce((sum, r) => sum + r.right, 0);
  const among = played.reduce((sum, r) => sum + r.amongRepairs, 0);
  const share = (r: ReachRow): number => r.right / r.cases;
  const worst = played
    .toSorted((a, b) => share(a) - share(b) || (a.fault < b.fault ? -1 : 1))
    .slice(0, WORST);
  const never = rows.filter((r) => r.cases === 0).map((r) => r.fault);
  return [
    `${total} cases from ${played.length} faults, ${cases} each: right part named ${((100 * right) / total).toFixed(1)} % (bar 90 %), named or among the repairs in order ${((100 * among) / total).toFixed(1)} %, mean ${mean(played.map((r) => r.minutes)).toFixed(0)} min`,
    `${played.filter((r) => share(r) < 0.9).length} faults below 90 %; no case could start from: ${never.join(", ") || "none"}`,
    table(
      ["fault", "named %", "or among repairs %", "minutes", "named instead"],
      worst.map((r) => [
        r.fault,
        (100 * share(r)).toFixed(0),
        ((100 * r.amongRepairs) / r.cases).toFixed(0),
        r.minutes.toFixed(0),
        r.named.join("; "),
      ]),
    ),
  ].join("\n");
}
