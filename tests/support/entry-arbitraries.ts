import fc from "fast-check";
import type { CaseCar, Entry, KnownEntry } from "../../lib/case/index.ts";

/** Few ids, times and findings on purpose: collisions are where a fold can go wrong. */
const IDS = Array.from({ length: 12 }, (_, i) => `e${i}`);
const CASE_ID = "case-1";
const START = Date.UTC(2026, 2, 1, 9);

const at = fc.integer({ min: 0, max: 6 }).map((s) => new Date(START + s * 1000).toISOString());
const finding = fc.constantFrom("noise", "noise:small-bumps", "play-3-9@front-left", "kerb-strike");
const check = fc.constantFrom("rock-wheel@front-left", "look-at-boot@front-right");

type Body<E> = E extends KnownEntry ? Omit<E, "id" | "caseId" | "at" | "by"> : never;
type EntryBody = Body<KnownEntry> | { readonly kind: "hologram"; readonly picture: string };

const body: fc.Arbitrary<EntryBody> = fc.oneof(
  fc.record({
    kind: fc.constant("opened" as const),
    release: fc.constantFrom("aaa", "bbb"),
    car: fc.constantFrom<CaseCar[]>({ drive: "front" }, { odometerKm: 90_000 }),
    customer: fc.constant("Invented Customer"),
    vehicle: fc.constant("invented hatchback"),
  }),
  fc.record({ kind: fc.constant("told" as const), text: fc.constantFrom("clunk", "rattle") }),
  fc.record({
    kind: fc.constant("answered" as const),
    finding,
    state: fc.constantFrom("present" as const, "absent" as const, "unknown" as const),
    how: fc.constantFrom("report" as const, "check" as const),
    check,
  }),
  fc.record({ kind: fc.constant("refused" as const), finding, words: fc.constantFrom("a", "b") }),
  fc.record({ kind: fc.constant("set-up" as const), setUp: fc.constantFrom("standing", "road") }),
  fc.record({ kind: fc.constant("not-possible" as const), check, reason: fc.constantFrom("wet", "no lift") }),
  fc.record({ kind: fc.constant("cautions-read" as const), check }),
  fc.record({
    kind: fc.constant("car-changed" as const),
    car: fc.constantFrom<CaseCar[]>({ drive: "rear" }, {}),
  }),
  fc.record({ kind: fc.constant("release-changed" as const), release: fc.constantFrom("bbb", "ccc") }),
  fc.record({
    kind: fc.constant("verdict" as const),
    suspects: fc.constant(["joint-worn@front-left"]),
    proof: fc.constant(["play-3-9@front-left"]),
  }),
  fc.record({
    kind: fc.constant("advised" as const),
    level: fc.constantFrom("hold", "careful"),
    said: fc.constant("Leave it standing."),
    p50: fc.constantFrom(60, 90),
    parts: fc.constantFrom([], ["lower-ball-joint@front-left"]),
  }),
  fc.record({ kind: fc.constant("assigned" as const), to: fc.constantFrom("ana", "ben") }),
  fc.constant({ kind: "assigned" as const }),
  fc.constant({ kind: "reopened" as const }),
  fc.record({ kind: fc.constant("note" as const), text: fc.constantFrom("n1", "n2") }),
  fc.record({ kind: fc.constant("retracted" as const), entry: fc.constantFrom(...IDS) }),
  fc.record({ kind: fc.constant("hologram" as const), picture: fc.constant("of a newer version") }),
);

/** Any entry, its id drawn from a few so that different entries may share one. */
const entry: fc.Arbitrary<Entry> = fc
  .tuple(fc.constantFrom(...IDS), at, fc.constantFrom("ana", "ben"), body)
  .map(([id, when, by, rest]) => ({ ...rest, id, caseId: CASE_ID, at: when, by }));

/** Any list of entries: clocks that run wrong, ids used twice, retractions of anything, rings of retractions. */
export const anyEntries: fc.Arbitrary<Entry[]> = fc.array(entry, { maxLength: 14 });

/** The same entries delivered otherwise: shuffled, some of them several times. */
export function delivered(entries: readonly Entry[]): fc.Arbitrary<Entry[]> {
  if (entries.length === 0) return fc.constant([]);
  return fc.array(fc.constantFrom(...entries), { maxLength: 10 }).chain((again) => {
    const all = [...entries, ...again];
    return fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length });
  });
}

/** Ids once each, retractions only of what is earlier: what well-behaved devices make. */
export const plainEntries: fc.Arbitrary<Entry[]> = fc
  .array(fc.tuple(at, body), { maxLength: 14 })
  .map((drafts) =>
    drafts.map(([when, rest], i) => {
      const target = "entry" in rest ? { entry: `e${i === 0 ? 99 : Number(rest.entry.slice(1)) % i}` } : {};
      return { ...rest, ...target, id: `e${i}`, caseId: CASE_ID, at: when, by: "ana" };
    }),
  );
