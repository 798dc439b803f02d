import type { Entry } from "../../lib/case/index.ts";
import { caseColumns } from "../../lib/store/case-columns.ts";
import { entryText, FILE_HEAD } from "../../lib/store/entry-text.ts";
import type { Store } from "../../lib/store/index.ts";
import type { CasesTable, EntriesTable } from "../../lib/store/tables.ts";
import { made, opening } from "./made-entries.ts";
import { seededUniform } from "./random-models.ts";

/** Rows of one statement; SQLite takes 32,766 values. */
const ROWS = 400;
const BODIES = ["hatchback", "estate", "saloon", "van", "pick-up", "coupe", "minibus"];
const NAMES = ["Alma", "Bruno", "Carla", "Dario", "Edda"];
/** Level with its place in the order of urgency; null: not known, "": nothing told. */
const LEVELS: readonly (readonly [level: string | null, urgency: number])[] = [
  ["recover", 0],
  [null, 1],
  ["hold", 2],
  ["careful", 3],
  ["", 99],
];

export interface SeededCase {
  readonly row: CasesTable;
  readonly entries: readonly EntriesTable[];
}

/**
 * An invented case of that number, as the server would have kept it: opened within the 200 days before
 * `now`, one of ten closed, half of the others given to somebody.
 */
export function seededCase(number: number, now: number, release: string): SeededCase {
  const uniform = seededUniform(9000 + number);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)] as T;
  const id = `seeded-${number}`;
  const openedAt = now - Math.floor(uniform() * 200 * 86_400_000);
  const at = (minutes: number): string => new Date(Math.min(now, openedAt + minutes * 60_000)).toISOString();
  const customer = `${pick(NAMES)} Invented`;
  const entries: Entry[] = [
    {
      ...opening(id, {
        release,
        car: { drive: "front" },
        customer,
        vehicle: `invented ${pick(BODIES)} ${number}`,
        plate: `HL ${String(number).padStart(5, "0")}`,
        invented: true,
      }),
      at: at(0),
    },
    made(id, `${id}-told`, at(1), { kind: "told", text: "It knocks over small bumps." }),
  ];
  if (uniform() < 0.5) entries.push(made(id, `${id}-who`, at(2), { kind: "assigned", to: pick(NAMES) }));
  if (uniform() < 0.1)
    entries.push(made(id, `${id}-end`, at(600), { kind: "verdict", suspects: [], proof: [] }));
  const [level, urgency] = pick(LEVELS);
  const texts = entries.map(entryText);
  return {
    row: {
      id,
      owner_id: null,
      changed_at: entries.at(-1)?.at ?? "",
      version: entries.length,
      characters: FILE_HEAD + texts.reduce((sum, { characters }) => sum + characters, 0),
      removed_at: null,
      // As if nothing could change it: the process beside a server leaves the urgency as it is seeded.
      told_version: 0,
      reckoned_version: 0,
      urgency,
      level,
      danger: level === null || level === "" ? null : uniform(),
      reckon_problem: level === null ? "seeded so" : null,
      ...caseColumns(entries),
    },
    entries: entries.map((entry, n) => ({
      case_id: id,
      seq: n + 1,
      id: entry.id,
      at: entry.at,
      kind: entry.kind,
      body: texts[n]?.body ?? "",
      received_at: entry.at,
      account_id: null,
    })),
  };
}

/** Puts such cases straight into a database. */
export async function seedCases(
  store: Store,
  count: number,
  now: number,
  release: string,
): Promise<readonly CasesTable[]> {
  const all = Array.from({ length: count }, (_, n) => seededCase(n, now, release));
  const cases = all.map(({ row }) => row);
  const entries = all.flatMap((one) => one.entries);
  await store.db.transaction().execute(async (trx) => {
    for (let from = 0; from < cases.length; from += ROWS)
      await trx
        .insertInto("cases")
        .values(cases.slice(from, from + ROWS))
        .execute();
    for (let from = 0; from < entries.length; from += ROWS)
      await trx
        .insertInto("entries")
        .values(entries.slice(from, from + ROWS))
        .execute();
  });
  return cases;
}
