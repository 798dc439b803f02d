import type { PolicyJob, PolicyRow } from "./simulation-jobs.ts";
import { workThrough } from "./pool.ts";
import { grouped, mean, standardError } from "./statistics.ts";
import { quantile, table } from "./timing.ts";

/** What the command line asks for. */
export interface SimulationOptions {
  /** Simulated cars; each bench has its own number when left out. */
  readonly cars?: number | undefined;
}

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
/** Largest share of another policy's minutes that the shipped one may take, in percent. */
const BARS: ReadonlyMap<string, number> = new Map([
  ["fixed checklist", 50],
  ["likeliest suspect first", 40],
]);
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
  const rows = (await workThrough<PolicyRow[]>(WORKER, "policies", jobs)).flat();
  const groups = grouped(rows, (r) => `${r.stop}\n${r.policy}`);
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
    mean(rows.map((r) => r.repairMinutes)),
    mean(rows.map((r) => r.minutes + r.repairMinutes)),
  ];
}

/** The shipped policy's minutes and errors as a share of others'. */
function bars(groups: ReadonlyMap<string, readonly PolicyRow[]>): string[] {
  const minutes = (key: string): number => mean((groups.get(key) ?? []).map((r) => r.minutes));
  const errors = (key: string): number => mean((groups.get(key) ?? []).map((r) => (r.right ? 0 : 100)));
  const others = [...groups.keys()].filter((key) => BARS.has(key.split("\n")[1] ?? ""));
  const owns = [...groups.keys()].filter((key) => key.split("\n")[1]?.startsWith("shipped"));
  const rows = owns.flatMap((own) =>
    others.map((other) => {
      const share = (100 * minutes(own)) / minutes(other);
      const bar = BARS.get(other.split("\n")[1] ?? "") ?? 0;
      const more = errors(own) - errors(other);
      const held = share <= bar && more <= 0 ? "yes" : share <= bar ? "errors" : "no";
      return [own.replace("\n", ": "), other.replace("\n", ": "), share, bar, more, held];
    }),
  );
  return [
    "",
    "Minutes of the shipped policy as a share of others', and how many more verdicts are wrong",
    table(["shipped, stop: policy", "against", "minutes %", "bar %", "errors, points", "held"], rows),
  ];
}
