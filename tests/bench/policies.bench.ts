import type { PolicyJob, PolicyRow } from "./simulation-jobs.ts";
import { workThrough } from "./pool.ts";
import { quantile, table } from "./timing.ts";

/** What the command line asks for. */
export interface SimulationOptions {
  /** Simulated cars; each bench has its own number when left out. */
  readonly cars?: number | undefined;
}

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
/** Cases on one car of the road. */
const CASES_A_CAR = 10;

/** Minutes, errors and repair under every policy, on cars of the shipped knowledge. */
export async function comparePolicies({ cars = 4000 }: SimulationOptions = {}): Promise<string> {
  const jobs = Array.from({ length: Math.ceil(cars / CASES_A_CAR) }, (_, k): PolicyJob => {
    return {
      kind: "policies",
      seed: 100_000 + 7919 * k,
      cars: Math.min(CASES_A_CAR, cars - k * CASES_A_CAR),
    };
  });
  const rows = (await workThrough<PolicyJob, PolicyRow[]>(WORKER, "policies", jobs)).flat();
  const groups = new Map<string, PolicyRow[]>();
  for (const row of rows) {
    const key = `${row.stop}\n${row.policy}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const lines = [...groups].map(([key, own]) => [...key.split("\n"), ...summary(own)]);
  const head = [
    "stop",
    "policy",
    "minutes",
    "+-",
    "median",
    "p90",
    "checks",
    "set-ups",
    "error %",
    "referred %",
    "sure %",
    "wrong of sure %",
    "claimed of sure %",
    "repair min",
    "total",
  ];
  return [table(head, lines), ...bars(groups)].join("\n");
}

function summary(rows: readonly PolicyRow[]): number[] {
  const minutes = rows.map((r) => r.minutes);
  const sure = rows.filter((r) => r.sure);
  const percent = (part: number, of: number): number => (of === 0 ? 0 : (100 * part) / of);
  return [
    mean(minutes),
    standardError(minutes),
    quantile(minutes, 0.5),
    quantile(minutes, 0.9),
    mean(rows.map((r) => r.checks)),
    mean(rows.map((r) => r.setUpChanges)),
    percent(rows.filter((r) => !r.right).length, rows.length),
    percent(rows.filter((r) => r.referred).length, rows.length),
    percent(sure.length, rows.length),
    percent(sure.filter((r) => !r.right).length, sure.length),
    100 * mean(sure.map((r) => 1 - r.chance)),
    mean(rows.map((r) => r.repairMinutes)),
    mean(rows.map((r) => r.minutes + r.repairMinutes)),
  ];
}

/** The shipped policy's minutes as a share of others', under the same stop rule. */
function bars(groups: ReadonlyMap<string, readonly PolicyRow[]>): string[] {
  const of = (key: string): number => mean((groups.get(key) ?? []).map((r) => r.minutes));
  const stops = [...new Set([...groups.keys()].map((key) => key.split("\n")[0]))];
  return stops.map((stop) => {
    const own = of(`${stop}\nshipped`);
    const share = (policy: string): string => `${((100 * own) / of(`${stop}\n${policy}`)).toFixed(1)} %`;
    return `${stop}: shipped takes ${share("fixed checklist")} of the fixed checklist's minutes (bar 50 %), ${share("likeliest suspect first")} of likeliest-first's (bar 40 %)`;
  });
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, v) => sum + v, 0) / values.length;
}

function standardError(values: readonly number[]): number {
  const middle = mean(values);
  const variance = values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / Math.max(1, values.length - 1);
  return Math.sqrt(variance / values.length);
}
