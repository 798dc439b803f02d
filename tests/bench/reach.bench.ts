import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import type { SimulationOptions } from "./policies.bench.ts";
import { workThrough } from "./pool.ts";
import type { ReachJob, ReachMiss, ReachRow } from "./simulation-jobs.ts";
import { mean } from "./statistics.ts";
import { table } from "./timing.ts";

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
/** Faults that were missed are played so often again with other seeds: a handful of cases each says little. */
const AGAIN = 40;

/** How far the search reaches, and where the figures go. */
export interface ReachOptions extends SimulationOptions {
  /** These faults only, so many cases each. */
  readonly faults?: readonly string[] | undefined;
  readonly each?: number | undefined;
  /** Seed of the first case; another one gives other cars and other answers. */
  readonly fromSeed?: number | undefined;
  /** Draw what happened to the car lately; else nothing did. */
  readonly lately?: boolean | undefined;
  /** Root of the repository, when the figures are to be kept in it. */
  readonly write?: string | undefined;
}

/** Cases from every fault, spread evenly: how often the search ends with the right part, and which faults do worst. */
export async function reachability(options: ReachOptions = {}): Promise<string> {
  const knowledge = shippedKnowledge();
  const { cars = 2000, faults = knowledge.faults.map((f) => f.id), lately = false, write } = options;
  const each = options.each ?? Math.max(1, Math.ceil(cars / faults.length));
  const rows = await played({ faults, cases: each, seed: options.fromSeed ?? 900_000, lately });
  const reached = rows.filter((r) => r.cases > 0);
  const seeds = reached.reduce((sum, r) => sum + r.cases, 0);
  const never = rows.filter((r) => r.cases === 0).map((r) => r.fault);
  const out = [
    summary(reached, each),
    `${reached.filter((r) => share(r) < 0.9).length} faults below 90 %; no case could start from: ${never.join(", ") || "none"}`,
    reasons(reached.flatMap((r) => r.misses)),
    worstTable(worstOf(reached).filter((r) => share(r) < 1)),
    missTable(reached),
  ];
  if (write !== undefined) {
    keep(write, knowledge.version, seeds, reached);
    // Said before the rest is played: it takes as long again.
    console.log(out.join("\n"));
    out.length = 0;
    const missed = reached.filter((r) => share(r) < 1).map((r) => r.fault);
    const again = await played({ faults: missed, cases: AGAIN, seed: 5_000_000, lately });
    const better = new Map(again.map((r) => [r.fault, r]));
    const kept = reached.map((r) => better.get(r.fault) ?? r);
    out.push(
      `The ${missed.length} faults that were missed, ${AGAIN} cases each`,
      worstTable(worstOf(again)),
      missTable(again),
    );
    keep(write, knowledge.version, seeds, kept);
  }
  return out.join("\n");
}

async function played({
  faults,
  ...same
}: Pick<ReachJob, "faults" | "cases" | "seed" | "lately">): Promise<ReachRow[]> {
  const jobs = faults.map((fault, k): ReachJob => {
    return { kind: "reach", ...same, seed: same.seed + 104_729 * k, faults: [fault] };
  });
  // In random order, so that the time left is told well.
  const uniform = seededUniform(1);
  const order = jobs
    .map((job) => ({ job, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .map((o) => o.job);
  const rows = (await workThrough<ReachRow[]>(WORKER, "reachability", order)).flat();
  return rows.toSorted((a, b) => (a.fault < b.fault ? -1 : 1));
}

function share(row: ReachRow): number {
  return row.right / row.cases;
}

function worstOf(rows: readonly ReachRow[]): ReachRow[] {
  return rows.toSorted((a, b) => share(a) - share(b) || (a.fault < b.fault ? -1 : 1));
}

function summary(rows: readonly ReachRow[], each: number): string {
  const total = rows.reduce((sum, r) => sum + r.cases, 0);
  const percent = (count: (row: ReachRow) => number): string =>
    `${((100 * rows.reduce((sum, r) => sum + count(r), 0)) / total).toFixed(1)} %`;
  return [
    `${total} cases from ${rows.length} faults, ${each} each: right part ${percent((r) => r.right)} (bar 90 %)`,
    `the very part at the very place ${percent((r) => r.exact)}`,
    `named or among the repairs in order ${percent((r) => r.amongRepairs)}`,
    `mean ${mean(rows.map((r) => r.minutes)).toFixed(0)} min`,
  ].join(", ");
}

function reasons(misses: readonly ReachMiss[]): string {
  const counts = new Map<string, number>();
  for (const { why } of misses) {
    const kind = why.replace(/ \(.*/, "");
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return [...counts].map(([why, count]) => `${count} times: ${why}`).join("; ");
}

function missTable(rows: readonly ReachRow[]): string {
  return table(
    ["hidden", "seed", "told", "named", "chance", "minutes", "why"],
    rows
      .flatMap((r) => r.misses)
      .map((m) => [m.hidden, m.seed, m.complaint, m.named, m.chance.toFixed(2), m.minutes.toFixed(0), m.why]),
  );
}

function worstTable(rows: readonly ReachRow[]): string {
  return table(
    ["fault", "cases", "right %", "or among repairs %", "minutes"],
    rows.map((r) => [
      r.fault,
      r.cases,
      (100 * share(r)).toFixed(0),
      ((100 * r.amongRepairs) / r.cases).toFixed(0),
      r.minutes.toFixed(0),
    ]),
  );
}

/** Writes what was measured beside the knowledge: no part of it, so that it does not change what is frozen. */
function keep(root: string, version: string, seeds: number, rows: readonly ReachRow[]): void {
  const folder = join(root, "knowledge", "measured");
  mkdirSync(folder, { recursive: true });
  const about = `How often simulated cases that start from each fault end with the right part, and after how many minutes of checking. The seeds are spread evenly; every fault that was missed was played again with ${AGAIN} other seeds, and has the figures of those. Made by: npm run bench -- reach --write --lately.`;
  const faults = rows.map(({ fault, cases, right, minutes }) => {
    return { fault, cars: cases, right, minutes: Math.round(minutes) };
  });
  writeFileSync(
    join(folder, "reach.json"),
    `${JSON.stringify({ about, knowledge: version, seeds, faults }, undefined, 2)}\n`,
  );
}
