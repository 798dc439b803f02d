import { canonicalJson } from "../../lib/knowledge/canonical.ts";
import { marginName } from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { ratioOfSums } from "../../lib/maths/ratio-of-sums.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { FORECASTS } from "./forecasts.ts";
import { ASKING_TOO, CONFIDENT, MARGINS, WAYS } from "./play-policies.ts";
import { workThrough } from "./pool.ts";
import { reliabilityTable } from "./reliability-table.ts";
import { sameErrorsTable } from "./same-errors.ts";
import type { PlayedCases, PolicyJob, PolicyResult } from "./simulation-jobs.ts";
import { packSlices, resumed, sliceFiles } from "./slices.ts";
import { mean, standardError } from "./statistics.ts";
import { quantile, table } from "./timing.ts";

/** What the command line asks for. */
export interface SimulationOptions {
  /** Simulated cars; each bench has its own number when left out. */
  readonly cars?: number | undefined;
}

/** What a run that may go on where it stopped is told. */
export interface ResumableOptions extends SimulationOptions {
  /** Root of the repository. */
  readonly root: string;
  /** The same, when figures are to be kept in it. */
  readonly write?: string | undefined;
}

const WORKER = new URL("./simulation.worker.mjs", import.meta.url);
const LIKELIEST = "likeliest suspect first";
/** Largest share of another policy's minutes that the shipped one may take, in percent. */
const BARS: ReadonlyMap<string, number> = new Map([
  ["fixed checklist", 50],
  [LIKELIEST, 40],
]);
/** Cases on one car of the road. */
const CASES_A_CAR = 10;

/** Minutes, errors and repair under every policy, on cars of the shipped knowledge. */
export async function comparePolicies({ cars = 4000, root, write }: ResumableOptions): Promise<string> {
  const jobs = Array.from({ length: Math.ceil(cars / CASES_A_CAR) }, (_, k): PolicyJob => {
    return {
      kind: "policies",
      seed: 100_000 + 7919 * k,
      cars: Math.min(CASES_A_CAR, cars - k * CASES_A_CAR),
    };
  });
  const knowledge = shippedKnowledge();
  const ways = WAYS.map(({ name, margins, confidence }) => [name, margins, confidence]);
  const files = sliceFiles(root, "policies", [canonicalJson(knowledge), ways, MARGINS, CONFIDENT]);
  const results = await resumed<PolicyResult>(
    files,
    jobs,
    (some, progress) => workThrough(WORKER, "policies", some, progress),
    console.error,
  );
  if (write !== undefined) packSlices(files);
  const played = waysOf(results);
  const shipped = marginName(workshopCosts(knowledge).stop.margin);
  const whole = played.filter(({ quarter }) => !quarter);
  const fourth = played.filter(({ quarter }) => quarter);
  return [
    "All cases",
    table(HEAD, whole.map(summary)),
    "",
    "Every fourth case",
    table(HEAD, fourth.map(summary)),
    "",
    "Minutes of the shipped policy as a share of others', and how many more verdicts are wrong, on the same cases",
    against(played, shipped),
    "",
    `Minutes of the shipped policy beside those of "${LIKELIEST}" at the same share of errors, by its own margins`,
    sameErrorsTable(
      fourth.filter((way) => isShipped(way) && way.stop !== CONFIDENT),
      fourth.filter(({ policy, stop }) => policy === LIKELIEST && stop !== CONFIDENT),
    ),
    "",
    `Forecasts of the shipped policy, asking too, ${shipped}`,
    ...FORECASTS.flatMap(([key, title]) => [
      title,
      reliabilityTable(results.map(({ forecasts }) => forecasts[key])),
    ]),
  ].join("\n");
}

/** One policy under one rule: its cases slice by slice. Slices are cases on one car, so they count as one each. */
interface Played {
  readonly stop: string;
  readonly policy: string;
  readonly quarter: boolean;
  readonly slices: readonly (PlayedCases | undefined)[];
}

function waysOf(results: readonly PolicyResult[]): Played[] {
  const [first] = results;
  return (first?.played ?? []).map(({ stop, policy, quarter }) => ({
    stop,
    policy,
    quarter,
    slices: results.map(({ played }) =>
      played.find((p) => p.stop === stop && p.policy === policy && p.quarter === quarter),
    ),
  }));
}

const isShipped = ({ policy }: Played): boolean => policy === ASKING_TOO || policy === "shipped";

const HEAD = [
  "stop",
  "policy",
  "cases",
  "minutes",
  "+-",
  "median",
  "p90",
  "checks",
  "set-ups",
  "error %",
  "+-",
  "referred %",
  "sure %",
  "wrong of sure %",
  "repair min",
  "total",
];

function summary({ stop, policy, slices }: Played): (string | number)[] {
  const minutes = slices.flatMap((s) => s?.minutes ?? []);
  const cases = minutes.length;
  const sum = (of: (s: PlayedCases) => number): number =>
    slices.reduce((total, s) => total + (s === undefined ? 0 : of(s)), 0);
  const percent = (part: number, of: number): number => (of === 0 ? 0 : (100 * part) / of);
  const sure = sum((s) => s.sure);
  const wrong = errorsOf(slices);
  const repair = sum((s) => s.repairMinutes) / cases;
  return [
    stop,
    policy,
    cases,
    mean(minutes),
    standardError(minutes),
    quantile(minutes, 0.5),
    quantile(minutes, 0.9),
    sum((s) => s.checks) / cases,
    sum((s) => s.setUpChanges) / cases,
    100 * wrong.ratio,
    100 * wrong.error,
    percent(
      sum((s) => s.referred),
      cases,
    ),
    percent(sure, cases),
    percent(
      sum((s) => s.sureAndWrong),
      sure,
    ),
    repair,
    mean(minutes) + repair,
  ];
}

const minutesOf = (s: PlayedCases | undefined): number => s?.minutes.reduce((a, b) => a + b, 0) ?? 0;

function errorsOf(slices: Played["slices"]): { ratio: number; error: number } {
  return ratioOfSums(
    slices.map((s) => s?.wrong ?? 0),
    slices.map((s) => s?.minutes.length ?? 0),
  );
}

/** The shipped policy's minutes and errors beside others' by the same rule, and beside theirs until 90 % sure. */
function against(played: readonly Played[], shippedStop: string): string {
  const others = played.filter(
    ({ stop, policy, quarter }) => BARS.has(policy) && (!quarter || stop !== shippedStop),
  );
  const rows = others.flatMap((other) =>
    played
      .filter((own) => isShipped(own) && own.quarter === other.quarter)
      .filter(({ stop }) => stop === (other.stop === CONFIDENT ? shippedStop : other.stop))
      .map((own) => {
        const share = ratioOfSums(own.slices.map(minutesOf), other.slices.map(minutesOf));
        const bar = BARS.get(other.policy) ?? 0;
        const more = ratioOfSums(
          own.slices.map((s, at) => (s?.wrong ?? 0) - (other.slices[at]?.wrong ?? 0)),
          own.slices.map((s) => s?.minutes.length ?? 0),
        );
        const held = 100 * share.ratio > bar ? "no" : more.ratio <= 0 ? "yes" : "errors";
        return [
          `${own.stop}: ${own.policy}`,
          `${other.stop}: ${other.policy}`,
          own.quarter ? "fourth" : "all",
          100 * share.ratio,
          100 * share.error,
          bar,
          100 * more.ratio,
          100 * more.error,
          held,
        ];
      }),
  );
  return table(
    ["shipped, stop: policy", "against", "cases", "minutes %", "+-", "bar %", "errors, points", "+-", "held"],
    rows,
  );
}
