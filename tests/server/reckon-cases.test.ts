import { expect, it } from "vitest";
import type { Urgency } from "../../lib/case/case-urgency.ts";
import type { Entry } from "../../lib/case/index.ts";
import type { WorkedCaseInput } from "../../lib/case/worked-case.ts";
import { reckonBeside, reckoningWith } from "../../lib/cli/reckon-beside.ts";
import type { ReleasesHere } from "../../lib/cli/releases-here.ts";
import { driveAdvice, groundCar, weighing } from "../../lib/engine/index.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import {
  appendEntries,
  caseHead,
  casesToReckon,
  reckonCases,
  reckonEverythingAnew,
  type Store,
} from "../../lib/store/index.ts";
import { entriesOfWorked } from "../support/cases-of-worked.ts";
import { made, note, opening, second } from "../support/made-entries.ts";
import { shippedFiles, shippedKnowledge } from "../support/shipped-knowledge.ts";
import { forEachStore } from "../support/stores.ts";

const knowledge = shippedKnowledge();
const worked = readKnowledge(shippedFiles()).workedCases.slice(0, 8) as unknown as WorkedCaseInput[];

/** The knowledge of this checkout under the name that the cases give; every other release is not there. */
function releases(known = ["now"]): ReleasesHere {
  const open = (release: string): Promise<Knowledge> =>
    known.includes(release)
      ? Promise.resolve(knowledge)
      : Promise.reject(new Error(`no release ${release} on this server`));
  return { newest: "now", open, sumOf: (release) => (known.includes(release) ? release : undefined) };
}

/** What the library's own functions say of a worked case, without any case, entry or database. */
function expectedOf({ car, findings }: WorkedCaseInput): Urgency {
  const contexts = new Set(knowledge.contexts.map(({ id }) => id));
  const happened = findings.filter(({ id, state }) => contexts.has(id) && state === "present");
  const grounded = groundCar(
    knowledge,
    car,
    happened.map(({ id }) => id),
  );
  const answers = findings
    .filter(({ id }) => !contexts.has(id))
    .map(({ id, state, level, by }) => ({ finding: id, state, by, ...(level !== undefined && { level }) }));
  const { advice } = knowledge;
  if (advice === undefined) throw new Error("the shipped knowledge has advice");
  const { level, danger } = driveAdvice(grounded, weighing(grounded, answers).weighed, advice);
  return { is: "level", level, danger };
}

const send = (store: Store, caseId: string, entries: readonly Entry[], at = 0) =>
  appendEntries(store, { caseId, entries, accountId: null, ownerId: null, now: second(at) });

const pending = (store: Store): Promise<string[]> => casesToReckon(store, { from: "oldest", limit: 100 });

async function reckonAll(store: Store, from = releases()): Promise<void> {
  const { urgency, levels } = await reckoningWith(from);
  await reckonCases(store, await pending(store), { urgency, levels });
}

const urgencyIn = async (store: Store, id: string) => (await caseHead(store, id))?.urgency;

forEachStore("the urgency of open cases", (databases) => {
  it("is what the library says of the car and the answers, whoever wrote the last one", async () => {
    const store = await databases.open();
    for (const [n, one] of worked.entries())
      await send(store, `w${n}`, entriesOfWorked(one, `w${n}`, "now"), n);
    expect(await pending(store)).toEqual(worked.map((_, n) => `w${n}`));
    await reckonAll(store);
    expect(await pending(store)).toEqual([]);
    const levels = new Set<string>();
    for (const [n, one] of worked.entries()) {
      const expected = expectedOf(one);
      const head = await urgencyIn(store, `w${n}`);
      expect(head).toMatchObject({ is: "level", current: true, problem: null });
      if (expected.is === "level") {
        expect(head?.level).toBe(expected.level);
        expect(head?.danger).toBeCloseTo(expected.danger, 10);
        levels.add(expected.level);
      }
    }
    // Otherwise the comparison would say little.
    expect(levels.size).toBeGreaterThan(1);
  });

  it("is reckoned again after what can change it, and only after that", async () => {
    const store = await databases.open();
    const [first] = worked as [WorkedCaseInput];
    const entries = entriesOfWorked(first, "c", "now");
    await send(store, "c", entries.slice(0, 1));
    await reckonAll(store);
    expect(await urgencyIn(store, "c")).toMatchObject({ is: "nothing-told", current: true });
    await send(store, "c", [note("c", "n"), made("c", "t", second(3), { kind: "told", text: "it knocks" })]);
    await send(store, "c", [made("c", "who", second(4), { kind: "assigned", to: "Ben" })]);
    expect(await pending(store)).toEqual([]);
    await send(store, "c", entries.slice(1));
    expect(await urgencyIn(store, "c")).toMatchObject({ is: "nothing-told", current: false });
    await reckonAll(store);
    expect(await urgencyIn(store, "c")).toMatchObject({ is: "level", current: true });
    await send(
      store,
      "c",
      entries
        .slice(1)
        .map(({ id }, n) => made("c", `r${n}`, second(90 + n), { kind: "retracted", entry: id })),
    );
    await reckonAll(store);
    expect(await urgencyIn(store, "c")).toMatchObject({ is: "nothing-told", current: true });
  });

  it("waits while a case is closed and comes after it is opened again", async () => {
    const store = await databases.open();
    const verdict = made("c", "v", second(50), { kind: "verdict", suspects: [], proof: [] });
    await send(store, "c", [...entriesOfWorked(worked[0] as WorkedCaseInput, "c", "now"), verdict]);
    expect(await pending(store)).toEqual([]);
    await send(store, "c", [made("c", "o", second(60), { kind: "reopened" })]);
    expect(await pending(store)).toEqual(["c"]);
  });

  it("is marked with the reason where it cannot be reckoned; the others go on, and it is tried again", async () => {
    const store = await databases.open();
    await send(store, "lost", [opening("lost", { release: "of another time" })], 1);
    await send(store, "odd", [opening("odd", { release: "now", car: { odometerKm: "plenty" } })], 2);
    await send(store, "good", [opening("good", { release: "now" })], 3);
    await reckonAll(store);
    expect(await urgencyIn(store, "lost")).toMatchObject({
      is: "unknown",
      current: true,
      problem: "no release of another time on this server",
    });
    expect((await urgencyIn(store, "odd"))?.problem).toContain("odometerKm");
    expect(await urgencyIn(store, "good")).toMatchObject({ is: "nothing-told", problem: null });
    expect(await pending(store)).toEqual([]);
    await reckonEverythingAnew(store, "failed");
    expect(await pending(store)).toEqual(["lost", "odd"]);
    await reckonAll(store, releases(["now", "of another time"]));
    expect(await urgencyIn(store, "lost")).toMatchObject({ is: "nothing-told", problem: null });
  });

  it("of older answers never takes the place of that of newer ones, and waits when an answer came meanwhile", async () => {
    const database = await databases.fresh();
    const [one, other] = [await databases.reopen(database), await databases.reopen(database)];
    const { levels } = await reckoningWith(releases());
    await send(one, "c", [opening("c", { release: "now" })]);
    const answer = made("c", "a", second(1), {
      kind: "answered",
      finding: "x",
      state: "present",
      how: "check",
    });
    await reckonCases(one, ["c"], {
      levels,
      // While this one is slow, an answer comes and another process reckons it.
      urgency: async () => {
        await send(other, "c", [answer]);
        await reckonCases(other, ["c"], {
          levels,
          urgency: () => ({ is: "level", level: "recover", danger: 9 }),
        });
        return { is: "nothing-told" };
      },
    });
    expect(await urgencyIn(one, "c")).toMatchObject({ level: "recover", danger: 9, current: true });
    await send(one, "d", [opening("d", { release: "now" })]);
    await reckonCases(one, ["d"], {
      levels,
      urgency: async () => {
        await send(other, "d", [{ ...answer, caseId: "d" }]);
        return { is: "nothing-told" };
      },
    });
    expect(await urgencyIn(one, "d")).toMatchObject({ is: "nothing-told", current: false });
    expect(await pending(one)).toEqual(["d"]);
  });

  it("comes right with two processes on one database, while entries are being added", async () => {
    const database = await databases.fresh();
    const store = await databases.reopen(database);
    const stop = new AbortController();
    const said: string[] = [];
    let drawn = 0;
    const beside = () =>
      reckonBeside({
        database,
        signal: stop.signal,
        say: (text) => said.push(text),
        releases: releases(),
        uniform: () => (drawn++ % 10) / 10,
      });
    const running = [beside(), beside()];
    const whole = worked.map((one, n) => entriesOfWorked(one, `p${n}`, "now"));
    // Entry by entry, all cases in turn: most are weighed several times.
    for (let at = 0; at < 40; at++) {
      for (const [n, entries] of whole.entries()) {
        const entry = entries[at];
        if (entry !== undefined) await send(store, `p${n}`, [entry], at);
      }
    }
    await expect.poll(() => pending(store), { timeout: 40_000, interval: 200 }).toEqual([]);
    stop.abort();
    await Promise.all(running);
    expect(said).toEqual([]);
    for (const [n, one] of worked.entries()) {
      const expected = expectedOf(one);
      expect(await urgencyIn(store, `p${n}`)).toMatchObject({
        is: "level",
        level: expected.is === "level" ? expected.level : "",
      });
    }
  });
});
