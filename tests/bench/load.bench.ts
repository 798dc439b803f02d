import { availableParallelism, loadavg } from "node:os";
import type { StoreKind } from "../../lib/store/index.ts";
import { embeddedCopy, PEOPLE, postgresCopy, type WorkingCopy } from "./load/kept-databases.ts";
import {
  cursorOfPage,
  lookAtLists,
  peopleAtWork,
  sendingToBareRoute,
  signIn,
  type Tally,
  throughBareRoute,
  throughEntries,
  type Work,
} from "./load/people.ts";
import { type RunningServer, startApp, startBareRoute } from "./load/servers.ts";
import { quantile, table } from "./timing.ts";

const SCREENS = 200;
/** An answer every four seconds: faster than anybody works at a car. */
const THINK = [2000, 6000] as const;
/** Rounds of pushing as hard as it goes, in turns with the bare route, so that other work on the machine strikes both. */
const ROUNDS = 4;
const ROUND_MS = 5000;
const LOOKS = 41;
const PORTS = 3308;

interface LoadRequest {
  readonly root: string;
  readonly cases?: number | undefined;
  readonly seconds?: number | undefined;
  readonly only?: string | undefined;
}

const KINDS: readonly [StoreKind, (count: number) => Promise<WorkingCopy | undefined>][] = [
  ["embedded", embeddedCopy],
  ["postgres", postgresCopy],
];

/**
 * 200 screens of 40 people at work on the built app among many stored cases, then as many pushing as hard as it goes,
 * beside a route that does nothing: what an entry costs is told as a ratio to that.
 */
export async function loadOfServer(request: LoadRequest): Promise<string> {
  const { root, cases = 100_000, seconds = 30, only } = request;
  // Broken off, it ends by the way on which the servers are stopped.
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => process.exit(1));
  const bare = await startBareRoute(root, PORTS + 100);
  const reports: string[] = [];
  try {
    for (const [kind, copyOf] of KINDS) {
      if (only !== undefined && only !== kind) continue;
      const copy = await copyOf(cases);
      if (copy === undefined) {
        reports.push(`${kind}: left out, as no such server was found.`);
        continue;
      }
      try {
        const app = await startApp(root, PORTS, copy.database);
        try {
          reports.push(`${kind}\n${await measured(app, bare, cases, seconds)}`);
        } finally {
          await app.stop();
        }
      } finally {
        await copy.clear();
      }
    }
  } finally {
    await bare.stop();
  }
  return reports.join("\n\n");
}

const loadNow = (): string => (loadavg()[0] ?? 0).toFixed(1);
const timesOf = (tally: Tally, what: string): number[] => tally.times.get(what) ?? [];
const LABELS = {
  open: "open a case (head and entries)",
  add: "add an entry",
  hear: "from sending to hearing the news",
  news: "read the news",
  list: "list, first page",
  search: "search a plate",
};

async function measured(
  app: RunningServer,
  bare: RunningServer,
  cases: number,
  seconds: number,
): Promise<string> {
  const cookies = await signIn(app.origin);
  const work: Work = {
    origin: app.origin,
    cookies,
    cases,
    screens: SCREENS,
    think: THINK,
    forMs: 1000 * seconds,
  };
  const onBare = { ...work, origin: bare.origin };
  const before = loadNow();
  const paced = await peopleAtWork(work);
  const pacedBare = await sendingToBareRoute({ ...onBare, forMs: 10_000 });
  const floor = timesOf(pacedBare, "bare");
  const rows = Object.entries(LABELS).map(([what, label]) => {
    const times = timesOf(paced, what);
    return row(label, times, floor);
  });
  const pushed = await pushing(work, onBare);
  const lists = await listTimes(work, onBare);
  const tallies = [paced, pacedBare, ...pushed.tallies, ...lists.tallies];
  const errors = tallies.flatMap((tally) => tally.errors);
  return [
    `${SCREENS} screens of ${PEOPLE.length} people, ${cases} cases, ${seconds} s; ${availableParallelism()} cores, load ${before} before and ${loadNow()} after`,
    `errors: ${errors.length}${errors.length === 0 ? "" : ` (first: ${errors[0]})`}`,
    `\nAt work, ${THINK.join(" to ")} ms between answers; ratios to the bare route at the same pace`,
    table(HEAD, [...rows, row("bare route", floor, floor)]),
    `\nPushing, every screen as fast as it is answered: throughput is ${median(pushed.ratios).toFixed(2)} of the bare route's (rounds ${pushed.ratios.map((ratio) => ratio.toFixed(2)).join(", ")})`,
    `entries a second ${median(pushed.own).toFixed(0)}, bare route ${median(pushed.bare).toFixed(0)}`,
    `\nLists, one look at a time on an otherwise idle server; ratios to the bare route likewise`,
    table(HEAD, lists.rows),
  ].join("\n");
}

const HEAD = ["what", "n", "p50 ratio", "p95 ratio", "p50 ms", "p95 ms"];
const median = (values: readonly number[]): number => quantile(values, 0.5);

function row(label: string, times: readonly number[], floor: readonly number[]): (string | number)[] {
  const [p50, p95] = [median(times), quantile(times, 0.95)];
  return [label, times.length, p50 / median(floor), p95 / quantile(floor, 0.95), p50, p95];
}

async function pushing(own: Work, bare: Work) {
  const rates: { own: number[]; bare: number[] } = { own: [], bare: [] };
  const tallies: Tally[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const [bareRate, bareTally] = await throughBareRoute({ ...bare, forMs: ROUND_MS });
    const [ownRate, ownTally] = await throughEntries({ ...own, forMs: ROUND_MS });
    rates.bare.push(bareRate);
    rates.own.push(ownRate);
    tallies.push(bareTally, ownTally);
  }
  return { ...rates, ratios: rates.own.map((rate, n) => rate / (rates.bare[n] ?? Number.NaN)), tallies };
}

const roleOf = (role: string): number => PEOPLE.findIndex((person) => person.role === role);
const searched = (text: string): string => `/api/v1/cases?text=${encodeURIComponent(text)}`;

async function listTimes(work: Work, bare: Work) {
  const cursor = await cursorOfPage(work, roleOf("advisor"), 100);
  const looks = [
    [
      "advisor",
      [
        ["first page", () => "/api/v1/cases"],
        ["page 100", () => `/api/v1/cases?after=${cursor}`],
        ["open cases", () => "/api/v1/cases?closed=0"],
        ["search: common word", () => searched("hatchback")],
        ["search: three common words", () => searched("alma sample van")],
        ["search: a plate", (n: number) => searched(`hl ${String(n * 2003).padStart(6, "0")}`)],
        ["search: nothing found", () => searched("no such words")],
        ["search: two letters, not found", () => searched("qx")],
      ],
    ],
    ["instructor", [["first page, instructor", () => "/api/v1/cases"]]],
    [
      "trainee",
      [
        ["first page, trainee", () => "/api/v1/cases"],
        ["search: not found, trainee", () => searched("no such words")],
      ],
    ],
  ] as const;
  const alone = await lookAtLists(bare, 0, LOOKS, [["bare", () => "/entries"]]);
  const floor = timesOf(alone, "bare");
  const tallies = [alone];
  const rows: (string | number)[][] = [];
  for (const [role, paths] of looks) {
    const tally = await lookAtLists(work, roleOf(role), LOOKS, paths);
    tallies.push(tally);
    rows.push(...paths.map(([what]) => row(what, timesOf(tally, what), floor)));
  }
  return { rows, tallies };
}
