import { beforeAll, expect, it } from "vitest";
import { MOST_FORM_PHOTOS, MOST_FORM_USES } from "../../app/server/attempts.ts";
import { MOST_QUESTIONS, type View } from "../../app/server/form/form-view.ts";
import type { View as ScreenView } from "../../app/ui/form/view.ts";
import { type EntryOf, parseEntry } from "../../lib/case/index.ts";
import { releasesHere } from "../../lib/cli/releases-here.ts";
import { appendEntries, entriesAfter, makeLink, revokeLink } from "../../lib/store/index.ts";
import { made, opening, second } from "../support/made-entries.ts";
import { jpegWithPlace, segmentsOf } from "../support/made-pictures.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, type Person, routeOf, signedIn } from "./desk.ts";

const MAKE = routeOf("POST", "/cases/{id}/links");
const LIST = routeOf("GET", "/cases/{id}/links");
const END = routeOf("DELETE", "/links/{id}");
const ADD = routeOf("POST", "/cases/{id}/entries");
const SHARED = routeOf("GET", "/shared");
const PHOTO = routeOf("GET", "/cases/{id}/photos/{photoId}");
const FORM = routeOf("GET", "/form");
const ANSWER = routeOf("POST", "/form/answers");
const WORDS = routeOf("POST", "/form/words");
const SEND = routeOf("POST", "/form/photos");
const DONE = routeOf("POST", "/form/done");
const BACK = routeOf("DELETE", "/form/answers/{id}");

/** What the screens take: the types check that it is what the server gives. */
const onScreen = (form: View): ScreenView => form;

/** The frozen release that the cases of these tests are weighed with. */
const RELEASE = "1.2.0";
const NEWEST = releasesHere().newest;
let count = 0;
const freshId = (): string => `device-made-${++count}`;

forEachStore("the form of a customer", (databases) => {
  const held = desk(databases);
  let ana: Person;
  beforeAll(async () => {
    ana = await signedIn(held.store, "ana", "advisor");
  });

  /** A new case with what was told at the desk, and the token of a form to it. */
  async function formOf(
    caseId: string,
    told: object[] = [],
    body: object = {},
    release = RELEASE,
  ): Promise<{ token: string; id: string }> {
    const entries = [
      opening(caseId, { release, customer: "Invented Customer", plate: "AB 12" }),
      made(caseId, `${caseId}-note`, second(1), { kind: "note", text: "for the workshop only" }),
      ...told.map((one, i) =>
        made(caseId, `${caseId}-t${i}`, second(2 + i), { kind: "answered", how: "report", ...one }),
      ),
    ];
    await appendEntries(held.store, { caseId, entries, accountId: "ana", ownerId: "ana", now: second(9) });
    return jsonOf(
      call(MAKE, { as: ana.cookie, params: { id: caseId }, body: { kind: "customer", ...body } }),
    );
  }
  const by = (token: string) => ({ headers: { authorization: `Bearer ${token}` } });
  const view = async (token: string): Promise<ScreenView> =>
    onScreen(await jsonOf<View>(call(FORM, by(token))));
  const answer = (token: string, form: ScreenView, choice: number, id = freshId()): Promise<Response> =>
    call(ANSWER, { ...by(token), body: { id, question: form.question?.id ?? "none", choice } });
  const entriesOf = async (caseId: string) =>
    (await entriesAfter(held.store, caseId, 0, 1000)).entries.map(
      ({ entry }) => entry as EntryOf<"answered">,
    );

  const NOISE = { finding: "noise", state: "present" };

  it("shows the customer the car and the questions, and nothing else of the case", async () => {
    const { token } = await formOf("shown", [NOISE], { days: 7, words: "Please answer\nby Thursday." });
    const answered = await call(FORM, by(token));
    const text = await answered.text();
    const form = JSON.parse(text) as View;
    expect(form).toMatchObject({
      ...{ words: "Please answer\nby Thursday.", car: "invented hatchback", said: [], done: false },
      question: { text: expect.stringMatching(/\?$/) },
    });
    expect(form.question?.choices.at(-1)).toBe("Don't know");
    const days = (Date.parse(form.expiresAt) - Date.now()) / 86_400_000;
    expect(days).toBeGreaterThan(6.9);
    for (const secret of [
      "workshop only",
      "Invented Customer",
      "AB 12",
      "ana",
      "shown",
      RELEASE,
      "aaa",
      token,
    ]) {
      expect(text, secret).not.toContain(secret);
    }
  });

  it.each([
    ["frozen", RELEASE],
    ["newest", NEWEST],
  ])(
    "asks one thing after the other, writes each answer into the case as the customer's, and stops: %s",
    async (name, release) => {
      const asked = `asked-${name}`;
      const { token, id } = await formOf(asked, [NOISE], {}, release);
      let form = await view(token);
      const seen: string[] = [];
      while (form.question !== null) {
        seen.push(form.question.id);
        expect(seen.length).toBeLessThanOrEqual(MOST_QUESTIONS);
        const response = await answer(token, form, seen.length % 3);
        expect(response.status).toBe(200);
        form = (await response.json()) as View;
      }
      expect(seen.length).toBe(MOST_QUESTIONS);
      expect(new Set(seen).size).toBe(seen.length);
      expect(form.said.map(({ kind }) => kind)).toEqual(seen.map(() => "answer"));
      const written = (await entriesOf(asked)).filter((entry) => entry.from === "customer");
      expect(written.length).toBeGreaterThanOrEqual(seen.length);
      for (const entry of written) {
        // What a device could not read would be lost to it.
        expect(parseEntry(entry)).toEqual(entry);
        expect(entry).toMatchObject({ kind: "answered", how: "report", by: "the customer", link: id });
      }
      expect(new Set(written.map(({ state }) => state))).toEqual(new Set(["present", "absent", "unknown"]));
    },
  );

  it("begins with what is wrong when nobody has said so", async () => {
    const { token } = await formOf("empty");
    const form = await view(token);
    expect(form).toMatchObject({ advice: null, question: { text: "What is wrong with the car?" } });
    const next = await jsonOf<View>(answer(token, form, 0));
    expect(next.question?.text).not.toBe(form.question?.text);
    expect(next.advice).not.toBeNull();
  });

  it("takes the same answer once, however often and however close together it is sent", async () => {
    const { token } = await formOf("twice", [NOISE]);
    const form = await view(token);
    const id = freshId();
    const answers = await Promise.all([answer(token, form, 0, id), answer(token, form, 0, id)]);
    answers.push(await answer(token, form, 0, id));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
    expect((await view(token)).said.map((said) => said.id)).toEqual([id]);
    expect((await entriesOf("twice")).filter((entry) => entry.id.startsWith(id))).toHaveLength(1);
  });

  it("takes only choices of a question that is open", async () => {
    const { token } = await formOf("choices", [NOISE]);
    const form = await view(token);
    const refused = await answer(token, form, 99);
    expect([refused.status, await jsonOf(refused)]).toMatchObject([422, { fields: [{ path: "choice" }] }]);
    await answer(token, form, 0);
    const over = await answer(token, form, 1);
    expect([over.status, await jsonOf(over)]).toMatchObject([409, { type: "/problems/question-over" }]);
    const none = await call(ANSWER, {
      ...by(token),
      body: { id: freshId(), question: "ask:engine", choice: 0 },
    });
    expect(none.status).toBe(409);
  });

  it("takes back what was said last and nothing else, and asks it again", async () => {
    const { token } = await formOf("back", [NOISE]);
    const first = await view(token);
    const ids = [freshId(), freshId()] as const;
    const then = await jsonOf<View>(answer(token, first, 0, ids[0]));
    await answer(token, then, 0, ids[1]);
    const back = (id: string): Promise<Response> => call(BACK, { ...by(token), params: { id } });
    const early = await back(ids[0]);
    expect([early.status, await jsonOf(early)]).toMatchObject([409, { type: "/problems/not-the-last" }]);
    const again = await jsonOf<View>(back(ids[1]));
    expect(again.question).toEqual(then.question);
    expect((await back(ids[1])).status).toBe(200);
    expect(await jsonOf(back(ids[0]))).toMatchObject({ said: [], question: first.question });
    // What the desk wrote is not the customer's to take back.
    expect((await back("back-note")).status).toBe(200);
    const all = await entriesOf("back");
    expect(all.filter(({ kind }) => (kind as string) === "retracted").map((entry) => entry.from)).toEqual([
      "customer",
      "customer",
    ]);
  });

  it("takes words and photos, without the place where they were taken, until it is done", async () => {
    const { token, id } = await formOf("told");
    const text = "It clunks on the left.\nSince Monday.";
    const told = await jsonOf<View>(call(WORDS, { ...by(token), body: { id: "words-of-theirs", text } }));
    expect(told.said).toEqual([{ id: "words-of-theirs", kind: "words", asked: null, text }]);
    const sent = await call(SEND, {
      ...by(token),
      query: "?id=photo-of-theirs&caption=here",
      body: await jpegWithPlace(),
    });
    expect(await jsonOf(sent)).toMatchObject({ photosLeft: 11, said: [{}, { kind: "photo", text: "here" }] });
    expect(await entriesOf("told")).toContainEqual(
      expect.objectContaining({
        kind: "photo",
        photo: "photo-of-theirs",
        from: "customer",
        link: id,
        caption: "here",
      }),
    );
    const show = (): Promise<Response> =>
      call(PHOTO, { as: ana.cookie, params: { id: "told", photoId: "photo-of-theirs" } });
    const segments = segmentsOf(new Uint8Array(await (await show()).arrayBuffer()));
    expect(segments.filter((name) => name.startsWith("APP1"))).toEqual([]);
    const listed = (): Promise<{ links: object[] }> =>
      jsonOf(call(LIST, { as: ana.cookie, params: { id: "told" } }));
    expect(await listed()).toMatchObject({ links: [{ kind: "customer", openedAt: null, doneAt: null }] });
    await view(token);
    expect(await jsonOf(call(DONE, by(token)))).toMatchObject({ done: true });
    expect(await listed()).toMatchObject({
      links: [{ openedAt: expect.any(String), doneAt: expect.any(String) }],
    });
    // A photo that its sender takes back is gone for good.
    expect((await call(BACK, { ...by(token), params: { id: "photo-of-theirs" } })).status).toBe(200);
    expect((await show()).status).toBe(404);
  });

  it.each<[string, object]>([
    ["nothing", { id: "words-empty", text: "  \n" }],
    ["too much", { id: "words-long", text: "x".repeat(4001) }],
    ["no id", { text: "clunk" }],
    ["an id that could be an entry's number", { id: "a_1-a_1-a", text: "clunk" }],
    ["who says it", { id: "words-other", text: "clunk", by: "ana" }],
  ])("does not take words with %s", async (what, body) => {
    const { token } = await formOf(`bad-${what.replaceAll(/[^a-z]/g, "-")}`);
    expect((await call(WORDS, { ...by(token), body })).status).toBe(422);
  });

  // Directive 2014/45/EU calls a brake hose or pipe that leaks dangerous; the bars are our own (advice.json).
  it("says at once not to drive when the answers speak for something dangerous, and never that the car is safe", async () => {
    const { token } = await formOf("danger", [
      { finding: "brake-weak", state: "present" },
      { finding: "fluid-leak", state: "present" },
    ]);
    const { advice } = await view(token);
    expect(advice?.stop).toBe(true);
    expect(advice?.say).toMatch(/do not drive|leave it standing/i);
    expect(advice?.stopIf.length).toBeGreaterThan(2);
    const mild = await formOf("mild", [NOISE]);
    const text = JSON.stringify((await view(mild.token)).advice);
    expect(text).toContain("nobody can tell");
    expect(text).not.toMatch(/is safe|safe to|roadworthy/i);
  });

  it("still takes words when the case is weighed with a release that is not here", async () => {
    const { token } = await formOf("foreign");
    await appendEntries(held.store, {
      caseId: "foreign",
      entries: [made("foreign", "r", second(5), { kind: "release-changed", release: "not-here" })],
      ...{ accountId: null, ownerId: null, now: second(10) },
    });
    expect(await view(token)).toMatchObject({ question: null, advice: null });
    expect((await call(WORDS, { ...by(token), body: { id: freshId(), text: "clunk" } })).status).toBe(200);
  });

  it("opens by its own link alone, which opens nothing else, and not once that is over", async () => {
    const { token, id } = await formOf("over", [NOISE]);
    const read = await jsonOf<{ token: string }>(
      call(MAKE, { as: ana.cookie, params: { id: "over" }, body: { kind: "read", days: 1 } }),
    );
    expect((await call(FORM, by(read.token))).status).toBe(401);
    expect((await call(SHARED, by(token))).status).toBe(401);
    const form = await view(token);
    const base = { kind: "customer", target: "over", madeBy: null, madeAt: second(0) };
    await makeLink(held.store, { ...base, id: "late", token: "l".repeat(32), expiresAt: second(1) });
    const late = await call(FORM, by("l".repeat(32)));
    expect([late.status, await jsonOf(late)]).toMatchObject([401, { type: "/problems/link-over" }]);
    expect((await call(END, { as: ana.cookie, params: { id } })).status).toBe(204);
    for (const response of [
      await call(FORM, by(token)),
      await answer(token, form, 0),
      await call(SEND, { ...by(token), query: "?id=photo-too-late", body: new Uint8Array(9) }),
    ])
      expect(response.status).toBe(401);
    expect(await revokeLink(held.store, id, second(1))).toBe(false);
  });

  it("lets nobody else speak for the customer", async () => {
    const { token } = await formOf("forged", [NOISE]);
    await answer(token, await view(token), 0, "said-by-them");
    const theirs = (await entriesOf("forged")).find(({ id }) => id === "said-by-them");
    const send = (entries: object[], caseId = "forged"): Promise<Response> =>
      call(ADD, { as: ana.cookie, params: { id: caseId }, body: { entries } });
    const forged = { ...theirs, id: "forged-one", state: "absent" };
    const refused = await send([{ ...forged }]);
    expect([refused.status, await jsonOf(refused)]).toMatchObject([
      422,
      { fields: [{ path: "entries.0.from" }] },
    ]);
    const { seal: _, ...unsealed } = forged as typeof forged & { seal?: string };
    expect((await send([unsealed])).status).toBe(422);
    // A device sends again what it has; to a server that was set back to an older copy it is news.
    expect((await send([theirs as object])).status).toBe(200);
    await held.store.db.deleteFrom("entries").where("id", "=", "said-by-them").execute();
    expect(await jsonOf(await send([theirs as object]))).toMatchObject({ added: ["said-by-them"] });
    // A case that comes from elsewhere brings along what was told there.
    const moved = [opening("moved"), { ...unsealed, caseId: "moved" }];
    expect((await send(moved, "moved")).status).toBe(200);
  });

  it("counts its uses by the link, photos apart", async () => {
    const { token, id } = await formOf("often");
    const use = async (key: string, count: number): Promise<void> => {
      await held.store.db
        .insertInto("rateLimit")
        .values({ id: key, key, count, lastRequest: Date.now() })
        .execute();
    };
    await use(`form-photo:${id}`, MOST_FORM_PHOTOS);
    const refused = await call(SEND, { ...by(token), query: "?id=photo-too-many", body: new Uint8Array(9) });
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get("retry-after"))).toBeGreaterThan(60);
    expect((await call(FORM, by(token))).status).toBe(200);
    await held.store.db
      .updateTable("rateLimit")
      .set({ count: MOST_FORM_USES })
      .where("key", "=", `form:${id}`)
      .execute();
    expect((await call(FORM, by(token))).status).toBe(429);
    expect((await call(FORM, by((await formOf("seldom")).token))).status).toBe(200);
  });
});
