import Papa from "papaparse";
import { afterAll, beforeAll, expect, it } from "vitest";
import { config } from "../../app/server/config.ts";
import { openServer } from "../../app/server/server.ts";
import type { Store } from "../../lib/store/index.ts";
import { type ClassBoard, readResult, type Statement } from "../../lib/training/index.ts";
import { handOut } from "../support/made-exercise.ts";
import { type PlayedStore, playedStore } from "../support/record-store.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, ORIGIN, type Person, routeOf, signedIn } from "./desk.ts";

const KEY = "k".repeat(32);
const BEARER = { authorization: `Bearer ${KEY}` };
const CHECK = "shake-anti-roll-bar@front-left";
const CAUSE = "anti-roll-bar-link-worn@front-left";

interface BoardReply {
  readonly board: ClassBoard;
  readonly more: boolean;
  readonly choices: { readonly courses: string[]; readonly trainees: { id: string | null; name: string }[] };
  readonly recordStore: string | null;
}
interface SentReply {
  readonly attempts: number;
  readonly taken: number;
  readonly trouble: string | null;
  readonly next: string | null;
}

forEachStore("the board of a class", (databases) => {
  const held = desk(databases);
  let ina: Person;
  let other: Person;
  let tom: Person;
  beforeAll(async () => {
    ina = await signedIn(held.store, "ina", "instructor");
    other = await signedIn(held.store, "otto", "instructor");
    tom = await signedIn(held.store, "tom", "trainee");
    await handOut(held.store, "worked", "ina");
    for (const [id, name] of [
      ["first-one", "=1+1"],
      ["second-one", "Tilda"],
    ])
      await call(routeOf("POST", "/attempts"), { body: { id, name, token: "token-of-worked", key: KEY } });
    const post = (what: string, body: unknown) =>
      call(routeOf("POST", `/attempts/{id}/${what}`), { params: { id: "first-one" }, headers: BEARER, body });
    await post("checks", { id: "c1", check: CHECK, cautionsRead: false });
    await post("checks", { id: "c2", check: CHECK, cautionsRead: false });
    await post("verdict", { id: "v", suspects: [CAUSE], confidence: 0.75 });
  });

  const board = (as: string, query = "") =>
    jsonOf<BoardReply>(call(routeOf("GET", "/attempts/board"), { as, query }));
  const table = async (path: string, query = "") => {
    const csv = await (await call(routeOf("GET", path), { as: ina.cookie, query })).text();
    return Papa.parse<Record<string, string>>(csv.trim(), { header: true }).data;
  };

  it("adds up what came of the verdict", async () => {
    const { board: seen, more, choices, recordStore } = await board(ina.cookie, "?exercise=worked");
    expect([more, recordStore]).toEqual([false, null]);
    // Brier 1950: (0.75 - 1)^2.
    expect(seen.total).toMatchObject({ attempts: 2, ended: 1, right: 1, confidence: 0.75, brier: 0.0625 });
    // The same check twice: the second time its result was known.
    expect(seen.lostIn.repeated).toBeGreaterThan(0);
    expect(seen.total.cautionsSkipped).toBe(1);
    expect(seen.trainees.map(({ name }) => name)).toEqual(["=1+1", "Tilda"]);
    expect(choices.trainees).toEqual([
      { id: null, name: "=1+1" },
      { id: null, name: "Tilda" },
    ]);
  });

  it("is for who teaches, each their own; a trainee is held off", async () => {
    for (const path of ["/attempts/board", "/attempts/steps.csv", "/attempts/statements.json", "/attempts"]) {
      expect([path, (await call(routeOf("GET", path), { as: tom.cookie })).status]).toEqual([path, 403]);
      expect([path, (await call(routeOf("GET", path), { headers: BEARER })).status]).toEqual([path, 401]);
    }
    const send = routeOf("POST", "/attempts/statements");
    expect((await call(send, { as: tom.cookie, body: {} })).status).toBe(403);
    const none = await board(other.cookie);
    expect([none.board.total.attempts, none.choices.trainees]).toEqual([0, []]);
  });

  it("is narrowed by what was asked for", async () => {
    const counts = async (query: string) => (await board(ina.cookie, query)).board.total.attempts;
    expect(await counts("?trainee=Tilda")).toBe(1);
    expect(await counts("?ended=yes&trainee=Tilda")).toBe(0);
    expect(await counts("?ended=no")).toBe(1);
    expect(await counts("?course=nobody%27s")).toBe(0);
    expect(await counts("?from=2000-01-01T00:00:00.000Z")).toBe(2);
    expect(await counts("?until=2000-01-01T00:00:00.000Z")).toBe(0);
  });

  // Source: RFC 4180; OWASP, CSV injection: what begins a formula is made text.
  it("is given as tables that a spreadsheet takes for text", async () => {
    expect(await table("/attempts.csv", "?exercise=worked&ended=yes")).toMatchObject([
      { trainee: "'=1+1", confidence: "0.75", named: CAUSE },
    ]);
    const steps = await table("/attempts/steps.csv", "?exercise=worked");
    expect(steps).toMatchObject([
      { attempt: "first-one", trainee: "'=1+1", step: "1", check: CHECK, "known already": "no" },
      { step: "2", check: CHECK, "known already": "yes", "cautions not read": "yes" },
    ]);
    const kept = await held.store.db
      .selectFrom("attempts")
      .select("score")
      .where("id", "=", "first-one")
      .execute();
    const result = readResult(kept[0]?.score ?? "");
    const sum = steps.reduce((all, step) => all + Number(step["minutes lost"]), 0);
    expect(sum).toBeCloseTo(result.score.lostMinutes, 0);
  });

  it("says before anything is sent that there is nowhere to send to", async () => {
    const response = await call(routeOf("POST", "/attempts/statements"), { as: ina.cookie, body: {} });
    expect(response.status).toBe(409);
    expect((await jsonOf<{ detail: string }>(response)).detail).toMatch(/CORNERWISE_XAPI_ENDPOINT/);
  });

  it("adds up a class of two thousand attempts, and sends them page by page, each once", async () => {
    const score = (
      await held.store.db.selectFrom("attempts").select("score").where("id", "=", "first-one").execute()
    )[0]?.score;
    await handOut(held.store, "many", "otto");
    await fill(held.store, 2000, score ?? "");
    const { board: seen } = await board(other.cookie);
    expect(seen.total).toMatchObject({ attempts: 2000, ended: 2000, brier: 0.0625 });
    expect(seen.trainees).toHaveLength(40);
    expect(seen.trainees.every(({ attempts }) => attempts === 50)).toBe(true);

    const statements = await jsonOf<Statement[]>(
      call(routeOf("GET", "/attempts/statements.json"), { as: other.cookie, query: "?trainee=trainee-1" }),
    );
    expect(statements).toHaveLength(150);
    expect(statements[0]?.actor.account).toEqual({ homePage: ORIGIN, name: "trainee-1" });
  });

  it("is sent where the owner said, page by page, and once however often", async () => {
    const store = await withRecordStore();
    let after: string | undefined;
    let attempts = 0;
    for (let pages = 0; pages < 5; pages += 1) {
      const body = { trainee: "trainee-1", ...(after !== undefined && { after }) };
      // The first page is sent twice, as after a lost reply.
      if (pages === 0) await call(routeOf("POST", "/attempts/statements"), { as: other.cookie, body });
      const sent = await jsonOf<SentReply>(
        call(routeOf("POST", "/attempts/statements"), { as: other.cookie, body }),
      );
      expect(sent).toMatchObject({ trouble: null, taken: sent.attempts * 3 });
      attempts += sent.attempts;
      if (sent.next === null) break;
      after = sent.next;
    }
    expect([attempts, store.kept.size]).toEqual([50, 150]);
    store.answering = (_, response) => {
      response.writeHead(401).end();
      return true;
    };
    const failed = await jsonOf<SentReply>(
      call(routeOf("POST", "/attempts/statements"), { as: other.cookie, body: { trainee: "trainee-1" } }),
    );
    expect(failed).toMatchObject({ taken: 0, trouble: expect.stringMatching(/key and secret/) });
  });

  let played: PlayedStore | undefined;
  afterAll(() => played?.close());
  /** The open server with a record store in its settings, as if it had been started with one. */
  async function withRecordStore(): Promise<PlayedStore> {
    played = await playedStore();
    const server = await openServer();
    const recordStore = { endpoint: played.endpoint, key: "desk", secret: "word" };
    Object.assign(server, { config: { ...config(), origin: ORIGIN, recordStore } });
    return played;
  }
});

/** Attempts that ended as one did, of forty trainees with accounts. */
async function fill(store: Store, count: number, score: string): Promise<void> {
  const rows = Array.from({ length: count }, (_, k) => ({
    id: `many-${k}`,
    hand_out_id: "hand-out-many",
    exercise_id: "many",
    trainee_id: `trainee-${k % 40}`,
    name: `Trainee ${k % 40}`,
    token_hash: null,
    started_at: new Date(Date.UTC(2026, 2, 1) + k * 60_000).toISOString(),
    ended_at: new Date(Date.UTC(2026, 2, 2) + k * 60_000).toISOString(),
    score,
    version: 0,
  }));
  for (let k = 0; k < rows.length; k += 50)
    await store.db
      .insertInto("attempts")
      .values(rows.slice(k, k + 50))
      .execute();
}
