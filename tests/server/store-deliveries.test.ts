import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import { type Entry, foldCase, mergeEntries } from "../../lib/case/index.ts";
import { appendEntries, caseHead, entriesAfter, type Store } from "../../lib/store/index.ts";
import { delivered, plainEntries } from "../support/entry-arbitraries.ts";
import { opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";

const RUNS = { seed: 20261128, numRuns: 60 };

/** What one device sends: its share of the entries, repeated and out of order, cut into deliveries. */
interface Device {
  readonly deliveries: readonly (readonly Entry[])[];
}

function cut(entries: readonly Entry[], sizes: readonly number[]): Entry[][] {
  const batches: Entry[][] = [];
  for (let from = 0, i = 0; from < entries.length; i++) {
    const size = sizes[i % sizes.length] ?? 1;
    batches.push(entries.slice(from, from + size));
    from += size;
  }
  return batches;
}

/** Entries of a case, and two to four devices that between them send all of it. */
const devices = plainEntries.chain((entries) =>
  fc
    .array(fc.subarray(entries), { minLength: 1, maxLength: 3 })
    .chain((shares) => {
      const sent = new Set(shares.flat());
      const rest = entries.filter((entry) => !sent.has(entry));
      return fc.tuple(
        ...[...shares, rest].map((share) =>
          fc
            .tuple(delivered(share), fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 4 }))
            .map(([list, sizes]): Device => ({ deliveries: cut(list, sizes) })),
        ),
      );
    })
    .map((all) => ({ entries, all })),
);

forEachStore("deliveries to the store", (databases) => {
  let one: Store;
  let other: Store;
  let cases = 0;
  beforeAll(async () => {
    const database = await databases.fresh();
    one = await databases.reopen(database);
    other = await databases.reopen(database);
  });

  /** Everything beyond a number, page by page, as a device asks for it. */
  async function pull(store: Store, caseId: string, after: number, page: number): Promise<Entry[]> {
    const found: Entry[] = [];
    for (let at = after; ; ) {
      const { version, entries } = await entriesAfter(store, caseId, at, page);
      expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, i) => at + i + 1));
      found.push(...entries.map(({ entry }) => entry));
      at += entries.length;
      if (at >= version) return found;
    }
  }

  it("from several devices at once, on two instances, come to one and the same case", async () => {
    await fc.assert(
      fc.asyncProperty(devices, fc.integer({ min: 1, max: 6 }), async ({ entries, all }, page) => {
        const caseId = `met-${++cases}`;
        const own = (entry: Entry): Entry => ({ ...entry, caseId });
        const first = opening(caseId);
        const send = async (store: Store, batch: readonly Entry[]): Promise<void> => {
          const delivery = { caseId, entries: batch, accountId: null, ownerId: null, now: second(1) };
          const { added, known } = await appendEntries(store, delivery);
          expect([...added, ...known].sort()).toEqual([...new Set(batch.map(({ id }) => id))].sort());
        };
        const sending = new AbortController();
        const seen: Entry[] = [];
        await send(one, [first]);
        const reader = (async () => {
          while (!sending.signal.aborted) seen.push(...(await pull(other, caseId, seen.length, page)));
        })();
        await Promise.all(
          all.map(async ({ deliveries }, i) => {
            const store = i % 2 === 0 ? one : other;
            await send(store, [first]);
            for (const batch of deliveries) await send(store, batch.map(own));
          }),
        );
        sending.abort();
        await reader;
        seen.push(...(await pull(other, caseId, seen.length, page)));

        const union = mergeEntries([first], entries.map(own));
        const kept = await pull(one, caseId, 0, page);
        expect(kept).toHaveLength(union.length);
        expect(mergeEntries(kept)).toEqual(union);
        expect(foldCase(kept)).toEqual(foldCase(union));
        expect(seen).toEqual(kept);
        const state = foldCase(union);
        expect(await caseHead(one, caseId)).toMatchObject({
          version: union.length,
          openedAt: state.openedAt,
          customer: state.customer,
          vehicle: state.vehicle,
          plate: state.plate ?? null,
          invented: state.invented,
          closed: state.verdict !== undefined,
        });
      }),
      RUNS,
    );
  });

  it("are generated as claimed: shared and repeated entries, several devices, several deliveries each", () => {
    const sample = fc.sample(devices, { seed: RUNS.seed, numRuns: 200 });
    const share = (has: (one: (typeof sample)[number]) => boolean): number =>
      sample.filter(has).length / sample.length;
    expect(share(({ all }) => all.length > 2)).toBeGreaterThan(0.3);
    expect(share(({ all }) => all.some(({ deliveries }) => deliveries.length > 2))).toBeGreaterThan(0.5);
    expect(
      share(({ entries, all }) => all.flatMap((d) => d.deliveries.flat()).length > entries.length + 3),
    ).toBeGreaterThan(0.5);
    expect(share(({ entries }) => entries.some(({ kind }) => kind === "verdict"))).toBeGreaterThan(0.2);
  });
});
