import { createHash } from "node:crypto";
import Papa from "papaparse";
import { beforeAll, expect, it } from "vitest";
import { giveVerdict } from "../../app/server/exercises/work.ts";
import type { Entry } from "../../lib/case/index.ts";
import { attemptById, attemptEntries, handOutById } from "../../lib/store/index.ts";
import type { Exercise } from "../../lib/training/index.ts";
import { made, note } from "../support/made-entries.ts";
import { madeExercise, SEED } from "../support/made-exercise.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, type Person, routeOf, signedIn } from "./desk.ts";

const KEY = "k".repeat(32);
const BEARER = { authorization: `Bearer ${KEY}` };
const CHECK = "shake-anti-roll-bar@front-left";
const QUESTION = "ask:noise:clunk";
const CAUSE = "anti-roll-bar-link-worn@front-left";

let number = 0;
const fresh = (): string => `made-here-${++number}`;
const tomorrow = (): string => new Date(Date.now() + 86_400_000).toISOString();

interface Added {
  readonly entries: readonly Entry[];
  readonly minutes: number;
}

forEachStore("an exercise on the server", (databases) => {
  const held = desk(databases);
  let ina: Person;
  let other: Person;
  let tom: Person;
  beforeAll(async () => {
    ina = await signedIn(held.store, "ina", "instructor");
    other = await signedIn(held.store, "otto", "instructor");
    tom = await signedIn(held.store, "tom", "trainee");
  });

  async function handedOut(exercise: Exercise, course?: string) {
    const { id } = await jsonOf<{ id: string }>(
      call(routeOf("POST", "/exercises"), { as: ina.cookie, body: exercise }),
    );
    const body = { expiresAt: tomorrow(), ...(course !== undefined && { course }) };
    const out = await jsonOf<{ id: string; code: string; token: string }>(
      call(routeOf("POST", "/exercises/{id}/hand-outs"), { as: ina.cookie, params: { id }, body }),
    );
    return { ...out, exerciseId: id, handOutId: out.id };
  }
  async function begun(exercise: Exercise): Promise<string> {
    const { token } = await handedOut(exercise);
    const id = fresh();
    await call(routeOf("POST", "/attempts"), { body: { id, token, key: KEY, name: "Tilda" } });
    return id;
  }
  const post = (id: string, what: string, body: unknown): Promise<Response> =>
    call(routeOf("POST", `/attempts/{id}/${what}`), { params: { id }, headers: BEARER, body });
  const read = (id: string): Promise<Response> =>
    call(routeOf("GET", "/attempts/{id}"), { params: { id }, headers: BEARER });
  const problem = async (answer: Promise<Response>): Promise<string> =>
    (await jsonOf<{ type: string }>(answer)).type.replace("/problems/", "");
  const verdict = { id: "the-verdict", suspects: [CAUSE], confidence: 0.75 };

  it("is begun by a code however it is typed, or by a link; by neither when it was ended", async () => {
    const { code, token, handOutId } = await handedOut(madeExercise());
    expect(code).toMatch(/^[2-9A-HJKMNP-Z]{8}$/);
    const typed = `${code.slice(0, 4).toLowerCase()} - ${code.slice(4)}`;
    for (const by of [{ code: typed }, { token }]) {
      const response = await call(routeOf("POST", "/attempts"), { body: { id: fresh(), key: KEY, ...by } });
      expect(response.status).toBe(201);
    }
    await call(routeOf("DELETE", "/hand-outs/{id}"), { as: ina.cookie, params: { id: handOutId } });
    for (const by of [{ code }, { token }, { code: "ZZZZ9999" }]) {
      expect(
        await problem(call(routeOf("POST", "/attempts"), { body: { id: fresh(), key: KEY, ...by } })),
      ).toBe("no-such-hand-out");
    }
    const kept = JSON.stringify(await held.store.db.selectFrom("hand_outs").selectAll().execute());
    expect(kept).not.toContain(token);
  });

  it("shows a trainee nothing of what is hidden, and alike whatever is hidden", async () => {
    const texts: string[] = [];
    const others = {
      seed: SEED,
      faults: [{ fault: "lower-ball-joint-worn", place: "front-right", causes: true }],
    };
    const exercises = [
      madeExercise(),
      madeExercise({ id: "ball-joint", hidden: { ...others, results: [] } }),
    ];
    for (const exercise of exercises) {
      const id = await begun(exercise);
      const answers = [
        await read(id),
        await call(routeOf("GET", "/attempts/mine"), { headers: BEARER }),
        await call(routeOf("GET", "/attempts/{id}/debrief"), { params: { id }, headers: BEARER }),
        await call(routeOf("GET", "/exercises"), { as: tom.cookie }),
        // What goes wrong is refused in the same words as well.
        await post(id, "checks", { id: "x", check: "no-such-check@front", cautionsRead: true }),
        await post(id, "verdict", { id: "x", suspects: ["no-such-fault@front"], confidence: 1 }),
        await post(id, "orders", { id: "x", repair: "no-such-part@front" }),
      ];
      const [worked, , ...rest] = await Promise.all(answers.map((answer) => answer.text()));
      const { attempts } = await jsonOf<{ attempts: { id: string }[] }>(
        call(routeOf("GET", "/attempts/mine"), { headers: BEARER }),
      );
      const own = JSON.stringify(attempts.find((row) => row.id === id));
      const all = [worked, own, ...rest].join("\n");
      for (const secret of ["hidden", "seed", String(SEED), "ball-joint", "worn-link"]) {
        expect(all).not.toContain(secret);
      }
      const headers = answers.map((answer) => JSON.stringify([answer.status, ...answer.headers.entries()]));
      texts.push(
        [all, ...headers]
          .join("\n")
          .replaceAll(/made-here-\d+|[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}/g, "ID")
          .replaceAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, "TIME"),
      );
    }
    expect(texts[1]).toBe(texts[0]);
  });

  it("finds the same however often a check is sent, counts its minutes once, and takes no result from outside", async () => {
    const id = await begun(madeExercise());
    const check = { id: "first", check: CHECK, cautionsRead: true };
    const first = await jsonOf<Added>(post(id, "checks", check));
    expect(await jsonOf<Added>(post(id, "checks", check))).toEqual(first);
    expect(first.entries.map(({ kind }) => kind)).toContain("answered");
    expect(first.minutes).toBeGreaterThan(0);
    const again = await jsonOf<Added>(post(id, "checks", { ...check, id: "second" }));
    const found = ({ entries }: Added): unknown =>
      entries.flatMap((e) =>
        e.kind === "answered" ? [[(e as { finding?: string }).finding, (e as { state?: string }).state]] : [],
      );
    expect(found(again)).toEqual(found(first));
    expect(await problem(post(id, "checks", { ...check, check: QUESTION }))).toBe("entry-differs");

    const at = "2026-03-01T09:00:00.000Z";
    for (const [kind, body] of [
      ["answered", { finding: "noise:clunk", state: "present", how: "check" }],
      ["set-up", { setUp: "standing" }],
      ["check-made", { check: CHECK }],
      ["verdict", { suspects: [], proof: [] }],
      ["retracted", { entry: "first" }],
    ] as const) {
      const entries = [made(id, `bad-${kind}`, at, { kind, ...body })];
      expect([kind, await problem(post(id, "entries", { entries }))]).toEqual([kind, "bad-input"]);
    }
    expect((await post(id, "entries", { entries: [note(id, "n1")] })).status).toBe(200);
    const worked = await jsonOf<Added>(read(id));
    expect(worked.entries.filter(({ kind }) => kind === "check-made")).toHaveLength(2);
    expect(worked.entries.at(-1)).toMatchObject({ kind: "note", id: "n1" });
  });

  it("keeps to what it gives: no lift, no more minutes than there are", async () => {
    const without = await begun(
      madeExercise({ terms: { ...madeExercise().terms, lift: false, helper: false, mostMinutes: 4 } }),
    );
    expect(await problem(post(without, "checks", { id: "a", check: CHECK, cautionsRead: true }))).toMatch(
      /not-possible-here|time-over/,
    );
    const short = await begun(madeExercise({ terms: { ...madeExercise().terms, mostMinutes: 1 } }));
    expect((await post(short, "checks", { id: "q", check: QUESTION, cautionsRead: false })).status).toBe(200);
    const refused = post(short, "checks", { id: "b", check: CHECK, cautionsRead: true });
    expect(await problem(refused)).toBe("time-over");
    expect((await jsonOf<Added>(read(short))).minutes).toBeLessThanOrEqual(1);
  });

  it("ends with a verdict, is scored, shows what was hidden, and takes nothing more", async () => {
    const { token, exerciseId } = await handedOut(madeExercise(), "=Autumn");
    const id = fresh();
    const start = { id, token, key: KEY, name: "Tilda" };
    for (let twice = 0; twice < 2; twice++) await call(routeOf("POST", "/attempts"), { body: start });
    await post(id, "checks", { id: "first", check: CHECK, cautionsRead: false });
    await post(id, "orders", { id: "part", repair: "lower-ball-joint@front-left" });
    const debrief = (as?: string) =>
      call(routeOf("GET", "/attempts/{id}/debrief"), {
        params: { id },
        ...(as === undefined ? { headers: BEARER } : { as }),
      });
    expect(await problem(debrief())).toBe("attempt-open");
    expect((await debrief(ina.cookie)).status).toBe(200);
    expect(await problem(debrief(other.cookie))).toBe("no-such-attempt");
    expect(await problem(debrief(tom.cookie))).toBe("no-such-attempt");

    const ended = await jsonOf<{ score: { right: boolean; brier: number; wrongParts: string[] } }>(
      post(id, "verdict", verdict),
    );
    // Brier 1950: (0.75 - 1)^2.
    expect(ended.score).toMatchObject({
      right: true,
      brier: 0.0625,
      wrongParts: ["lower-ball-joint@front-left"],
      cautionsSkipped: [CHECK],
    });
    expect(await jsonOf(post(id, "verdict", verdict))).toEqual(ended);
    for (const [what, body] of [
      ["verdict", { ...verdict, id: "another" }],
      ["checks", { id: "late", check: CHECK, cautionsRead: true }],
      ["orders", { id: "late", repair: "anti-roll-bar-link@front-left" }],
      ["entries", { entries: [note(id, "late")] }],
    ] as const) {
      expect([what, await problem(post(id, what, body))]).toEqual([what, "attempt-over"]);
    }
    const shown = await jsonOf<{ exercise: Exercise; debrief: { steps: unknown[]; causes: string[] } }>(
      debrief(),
    );
    expect(shown.exercise.hidden.seed).toBe(SEED);
    expect(shown.debrief).toMatchObject({ causes: ["anti-roll-bar-link@front-left"] });
    expect(shown.debrief.steps).toHaveLength(1);

    const board = await jsonOf<{ attempts: { id: string; trainee: unknown; score: unknown }[] }>(
      call(routeOf("GET", "/attempts"), { as: ina.cookie, query: `?exercise=${exerciseId}` }),
    );
    expect(board.attempts).toMatchObject([{ id, trainee: { id: null, name: "Tilda" }, score: ended.score }]);
    const none = await jsonOf<{ attempts: unknown[] }>(
      call(routeOf("GET", "/attempts"), { as: other.cookie }),
    );
    expect(none.attempts).toEqual([]);
    // Source: OWASP, CSV injection: what begins a formula is made text.
    const csv = await (
      await call(routeOf("GET", "/attempts.csv"), { as: ina.cookie, query: `?exercise=${exerciseId}` })
    ).text();
    const { data } = Papa.parse<Record<string, string>>(csv.trim(), { header: true });
    expect(data).toMatchObject([
      { course: "'=Autumn", trainee: "Tilda", right: "yes", "Brier score": "0.0625" },
    ]);
  });

  it("tells a verdict that comes again while it is being kept what became of the first", async () => {
    const id = await begun(madeExercise());
    const asking = async () => {
      const attempt = await attemptById(held.store, id);
      const handOut = attempt && (await handOutById(held.store, attempt.handOutId));
      if (attempt === undefined || handOut === undefined) throw new Error("The attempt was not begun.");
      return { store: held.store, now: new Date().toISOString(), attempt, handOut };
    };
    // Read before the first one ended it, as by a request that came at the same time.
    const open = await asking();
    const both = await Promise.all([giveVerdict(open, verdict), giveVerdict(open, verdict)]);
    expect(both[1]).toEqual(both[0]);
    expect(await giveVerdict(open, verdict)).toEqual(both[0]);
    await expect(giveVerdict(open, { ...verdict, id: "another" })).rejects.toMatchObject({
      code: "attempt-over",
    });
    const entries = await attemptEntries(held.store, id);
    expect(entries.filter(({ kind }) => kind === "verdict").map((one) => one.id)).toEqual([verdict.id]);
  });

  it("belongs to the account of whoever is signed in, and to nobody else", async () => {
    const { token } = await handedOut(madeExercise());
    const id = fresh();
    const begin = { as: tom.cookie, body: { id, token } };
    expect(await jsonOf(call(routeOf("POST", "/attempts"), begin))).toEqual({ id, token: null });
    const mine = await jsonOf<{ attempts: unknown[] }>(
      call(routeOf("GET", "/attempts/mine"), { as: tom.cookie }),
    );
    expect(mine.attempts).toMatchObject([{ id, trainee: { id: "tom" } }]);
    expect(await problem(read(id))).toBe("no-such-attempt");
    // The id alone takes nothing over.
    const taken = call(routeOf("POST", "/attempts"), { body: { id, token, key: KEY } });
    expect(await problem(taken)).toBe("no-such-attempt");
  });

  it("stays for those who began it as it was handed out, whatever becomes of it", async () => {
    const { token, exerciseId } = await handedOut(madeExercise());
    const changed = await call(routeOf("PUT", "/exercises/{id}"), {
      as: ina.cookie,
      params: { id: exerciseId },
      body: madeExercise({ name: "Changed", text: "It hums." }),
      headers: { "if-match": '"1"' },
    });
    expect([changed.status, changed.headers.get("etag")]).toEqual([200, '"2"']);
    const stale = call(routeOf("PUT", "/exercises/{id}"), {
      as: ina.cookie,
      params: { id: exerciseId },
      body: madeExercise(),
      headers: { "if-match": '"1"' },
    });
    expect(await problem(stale)).toBe("changed-meanwhile");
    const id = fresh();
    await call(routeOf("POST", "/attempts"), { body: { id, token, key: KEY } });
    await call(routeOf("DELETE", "/exercises/{id}"), { as: ina.cookie, params: { id: exerciseId } });
    const { exercise } = await jsonOf<{ exercise: { text: string; release: string } }>(read(id));
    expect(exercise.text).toBe("It knocks over small bumps.");
    // The knowledge is named by the sum of its text from then on.
    const { release } = exercise;
    expect(release).toMatch(/^[\da-f]{64}$/);
    expect((await post(id, "verdict", verdict)).status).toBe(200);
    const shown = await call(routeOf("GET", "/attempts/{id}/debrief"), { as: ina.cookie, params: { id } });
    expect(shown.status).toBe(200);
  });

  it.each([
    [{ release: "0.0.9" }, /release.*no knowledge 0\.0\.9/],
    [{ said: [{ finding: "noise:small-bumps", state: "present" as const }] }, /said.*nobody complains/],
    [
      { hidden: { seed: 1, results: [], faults: [{ fault: "no-such", place: "front-left", causes: true }] } },
      /hidden\.faults\.0.*no-such/,
    ],
  ])("is not kept when it cannot be worked: %o", async (fields, words) => {
    const response = await call(routeOf("POST", "/exercises"), {
      as: ina.cookie,
      body: madeExercise(fields),
    });
    expect(response.status).toBe(422);
    expect((await jsonOf<{ detail: string }>(response)).detail).toMatch(words);
  });

  it("cannot be found by trying codes", async () => {
    const tries = Array.from({ length: 151 }, () =>
      call(routeOf("POST", "/attempts"), {
        body: { id: fresh(), key: KEY, code: "ZZZZ2222" },
        headers: { "x-forwarded-for": "10.0.0.99" },
      }),
    );
    const statuses = (await Promise.all(tries)).map(({ status }) => status);
    expect(statuses.filter((status) => status === 429).length).toBeGreaterThan(0);
  });

  it("keeps only hashes of the keys of browsers", async () => {
    const kept = JSON.stringify(await held.store.db.selectFrom("attempts").selectAll().execute());
    expect(kept).not.toContain(KEY);
    expect(kept).toContain(createHash("sha256").update(KEY).digest("hex"));
  });
});
