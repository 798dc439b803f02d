import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { sql } from "kysely";
import { listCases, type ListRequest, openStore, type Store } from "../../lib/store/index.ts";
import { findPostgres } from "../support/find-postgres.mjs";
import { startPostgres } from "../support/postgres-server.mjs";
import { seedCases } from "../support/seed-overview.ts";
import { quantile, table } from "./timing.ts";

const LOOKS = 41;
const PAGE = 50;
const NOW = Date.UTC(2026, 10, 28);

const PAGES: readonly (readonly [string, Omit<ListRequest, "limit">])[] = [
  ["open, by urgency", { order: "urgent", closed: false }],
  ["open, of one level", { order: "urgent", levels: ["hold"] }],
  ["open, nobody's", { order: "urgent", closed: false, who: "nobody" }],
  ["open, somebody's, two levels", { order: "urgent", levels: ["recover", "hold"], who: { name: "Edda" } }],
  ["open, longest first", { order: "oldest", closed: false }],
  ["last changed", { order: "changed" }],
  ["search, found", { order: "urgent", closed: false, text: "hl 04217" }],
  ["search, common word and a level", { order: "urgent", levels: ["careful"], text: "minibus" }],
  ["search, not found", { order: "urgent", closed: false, text: "no such words" }],
];

/** Pages of the overview beside a select of the same rows by their ids, in turns: what picking, sorting and searching cost. */
export async function overviewPages(request: {
  readonly cases?: number | undefined;
  readonly only?: string | undefined;
}): Promise<string> {
  const { cases = 10_000, only } = request;
  const folder = mkdtempSync(join(tmpdir(), "cornerwise-overview-"));
  const reports: string[] = [];
  try {
    if (only !== "postgres") reports.push(await measured(join(folder, "shop.db"), cases));
    const bin = findPostgres();
    if (bin === undefined) reports.push("postgres: left out, as no such server was found.");
    else if (only !== "embedded") {
      const server = await startPostgres(bin, `${folder}-postgres`);
      try {
        reports.push(await measured(await server.createDatabase("shop"), cases));
      } finally {
        await server.stop();
      }
    }
  } finally {
    for (const end of ["", "-postgres"]) rmSync(`${folder}${end}`, { recursive: true, force: true });
  }
  return reports.join("\n\n");
}

async function measured(database: string, cases: number): Promise<string> {
  const store = await openStore({ database });
  try {
    await seedCases(store, cases, NOW, "1.2.0");
    await sql`analyze`.execute(store.db);
    const rows: (string | number)[][] = [];
    for (const [what, page] of PAGES) rows.push([what, ...(await compared(store, page))]);
    const cursor = await cursorAfter(store, Math.floor((0.8 * cases) / PAGE));
    rows.push([
      "open, by urgency, far down",
      ...(await compared(store, { order: "urgent", closed: false, after: cursor })),
    ]);
    const head = ["page of 50", "rows", "ratio to plain select", "ms", "plain ms"];
    return `${store.kind}, ${cases} cases, medians of ${LOOKS}\n${table(head, rows)}`;
  } finally {
    await store.close();
  }
}

async function compared(
  store: Store,
  page: Omit<ListRequest, "limit">,
): Promise<[number, number, number, number]> {
  const request = { ...page, limit: PAGE };
  const ids = (await listCases(store, request)).cases.map(({ id }) => id);
  // Where nothing is found, a select of one row by its id is the least that a question costs.
  const plainly = ids.length > 0 ? ids : ["none"];
  const [own, plain]: number[][] = [[], []];
  for (let look = 0; look < LOOKS; look++) {
    plain?.push(
      await timed(() => store.db.selectFrom("cases").selectAll().where("id", "in", plainly).execute()),
    );
    own?.push(await timed(() => listCases(store, request)));
  }
  const [ours, theirs] = [quantile(own ?? [], 0.5), quantile(plain ?? [], 0.5)];
  return [ids.length, ours / theirs, ours, theirs];
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

async function cursorAfter(store: Store, pages: number): Promise<string> {
  let after = "";
  for (let page = 0; page < pages; page++) {
    const { next } = await listCases(store, {
      order: "urgent",
      closed: false,
      limit: PAGE,
      ...(after !== "" && { after }),
    });
    if (next === null) break;
    after = next;
  }
  return after;
}
