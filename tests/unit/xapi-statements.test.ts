import { describe, expect, test } from "vitest";
import { uuidOfText } from "../../app/server/records/uuid-of-text.ts";
import { type KeptResult, Statement, statementsOf, type ToldAttempt } from "../../lib/training/index.ts";

const SITE = "https://desk.example";
const tools = { site: SITE, uuidOf: uuidOfText };

const result: KeptResult = {
  score: {
    right: true,
    rightPart: true,
    complete: false,
    minutes: 30,
    bestMinutes: 12,
    lostMinutes: 14,
    wrongParts: ["p@rear"],
    unsafe: [],
    cautionsSkipped: ["b@rear"],
    jumped: false,
    afterProof: 6,
    // Brier 1950: (0.75 - 1)^2.
    brier: 0.0625,
  },
  verdict: { suspects: ["a@front", "b@rear"], confidence: 0.75 },
};
const ended: ToldAttempt = {
  id: "attempt-one",
  exercise: { id: "e1", name: "A knock (invented)" },
  course: "Autumn, first year",
  trainee: { id: "account-7", name: "Tom Invented" },
  startedAt: "2026-03-01T09:00:00.000Z",
  endedAt: "2026-03-01T09:41:02.346Z",
  result,
};
const open: ToldAttempt = { ...ended, endedAt: null, result: undefined };

describe("an attempt as statements", () => {
  const [attempted, answered, completed] = statementsOf(ended, tools);

  test("are of the form of the standard, and three once it has ended", () => {
    expect(statementsOf(ended, tools).map((s) => Statement.parse(s))).toHaveLength(3);
    expect(statementsOf(open, tools).map((s) => Statement.parse(s).verb.display.en)).toEqual(["attempted"]);
  });

  // Source: ADL vocabulary (https://w3id.org/xapi/adl), its verbs and activity types.
  test("speak the vocabulary that record stores know", () => {
    expect([attempted, answered, completed].map((s) => s?.verb.id)).toEqual([
      "http://adlnet.gov/expapi/verbs/attempted",
      "http://adlnet.gov/expapi/verbs/answered",
      "http://adlnet.gov/expapi/verbs/completed",
    ]);
    expect([attempted, answered].map((s) => s?.object.definition.type)).toEqual([
      "http://adlnet.gov/expapi/activities/simulation",
      "http://adlnet.gov/expapi/activities/cmi.interaction",
    ]);
  });

  test("say how it went", () => {
    expect(completed).toMatchObject({
      version: "2.0.0",
      timestamp: ended.endedAt,
      result: {
        completion: true,
        success: true,
        score: { scaled: 0.9375, raw: 0.9375, min: 0, max: 1 },
        // From 09:00:00.000 to 09:41:02.346, to a hundredth: 41 * 60 + 2.35.
        duration: "PT2462.35S",
        extensions: { [`${SITE}/terms/ramp-minutes`]: 30, [`${SITE}/terms/cautions-skipped`]: 1 },
      },
    });
    expect(answered?.result).toMatchObject({ success: true, response: "a@front[,]b@rear" });
    expect(answered?.context.contextActivities?.parent?.[0]?.id).toBe(completed?.object.id);
    expect(attempted?.timestamp).toBe(ended.startedAt);
  });

  test("name an account by its id alone; a typed name never passes for one", () => {
    expect(completed?.actor.account).toEqual({ homePage: SITE, name: "account-7" });
    expect(JSON.stringify(statementsOf(ended, tools))).not.toContain("Tom Invented");
    const typed = statementsOf({ ...ended, trainee: { id: null, name: "account-7" } }, tools);
    expect(typed[0]?.actor.account).toEqual({ homePage: `${SITE}/exercise`, name: "account-7" });
  });

  test("are the same whenever they are made; ids differ by attempt and kind, the registration by attempt", () => {
    expect(statementsOf(ended, tools)).toEqual([attempted, answered, completed]);
    const other = statementsOf({ ...ended, id: "attempt-two" }, tools);
    const all = [attempted, answered, completed, ...other];
    expect(new Set(all.map((s) => s?.id)).size).toBe(6);
    expect(new Set(all.map((s) => s?.context.registration)).size).toBe(2);
    // That it was begun reads alike before and after its end, so that it may be sent both times.
    expect(statementsOf(open, tools)[0]).toEqual(attempted);
  });

  test("say no success and no score where no cause was to be judged", () => {
    const { right: _, brier: __, ...rest } = result.score;
    const score = { ...rest, right: undefined, brier: undefined };
    const [, , done] = statementsOf({ ...ended, result: { score } }, tools);
    expect(Statement.parse(done).result).not.toHaveProperty("score");
    expect(done?.result).not.toHaveProperty("success");
  });

  test.each([
    ["a word like =HYPERLINK()", "=HYPERLINK(1)"],
    ["letters beyond ASCII and blanks", "Übung % / ? #"],
  ])("keep IRIs whole with %s", (_, course) => {
    expect(() => statementsOf({ ...ended, course }, tools).map((s) => Statement.parse(s))).not.toThrow();
  });
});

/*
 * What a record store must refuse with 400.
 * Source: IEEE 9274.1.1-2023 and its forerunner xAPI 1.0.3, part two (data): 2.4.1 id, 2.4.2 actor, 2.4.3 verb, 2.4.4 object,
 * 2.4.5 result, 2.4.7 timestamp, 2.2 formatting (no null values).
 */
describe("the form of a statement", () => {
  const good = statementsOf(ended, tools)[2] as Statement;
  const done = good.result as NonNullable<Statement["result"]>;
  const score = done.score as NonNullable<typeof done.score>;
  test("takes what is made here", () => {
    expect(Statement.safeParse(good).success).toBe(true);
  });
  test.each<[string, unknown]>([
    ["an id that is no UUID", { ...good, id: "attempt-one completed" }],
    ["no actor", { ...good, actor: undefined }],
    ["an actor known in two ways", { ...good, actor: { ...good.actor, mbox: "mailto:tom@desk.example" } }],
    ["an account without its home page", { ...good, actor: { objectType: "Agent", account: { name: "x" } } }],
    [
      "a home page that is no address",
      { ...good, actor: { objectType: "Agent", account: { homePage: "desk", name: "x" } } },
    ],
    ["a verb that is no IRI", { ...good, verb: { ...good.verb, id: "completed" } }],
    ["words without a language", { ...good, verb: { ...good.verb, display: { "": "completed" } } }],
    ["an activity that is no IRI", { ...good, object: { ...good.object, id: "e1" } }],
    ["a score above one", { ...good, result: { ...done, score: { ...score, scaled: 1.01 } } }],
    ["a score below minus one", { ...good, result: { ...done, score: { ...score, scaled: -1.01 } } }],
    ["raw above its upper bound", { ...good, result: { ...done, score: { ...score, raw: 2 } } }],
    ["a lower bound that is not lower", { ...good, result: { ...done, score: { ...score, min: 1 } } }],
    ["success in words", { ...good, result: { ...done, success: "yes" } }],
    ["a duration in minutes", { ...good, result: { ...done, duration: "41 min" } }],
    ["an extension whose name is no IRI", { ...good, result: { ...done, extensions: { minutes: 3 } } }],
    ["a registration that is no UUID", { ...good, context: { ...good.context, registration: "one" } }],
    ["a moment without its day", { ...good, timestamp: "09:41:02Z" }],
    ["null in place of nothing", { ...good, result: null }],
    ["a property of nobody's", { ...good, mood: "good" }],
  ])("refuses %s", (_, statement) => {
    expect(Statement.safeParse(statement).success).toBe(false);
  });
});

describe("a UUID that follows from a text", () => {
  // Source: RFC 9562, appendix A.4: www.example.com in the namespace of DNS.
  test("is that of the standard's example", () => {
    expect(uuidOfText("www.example.com", "6ba7b810-9dad-11d1-80b4-00c04fd430c8")).toBe(
      "2ed6657d-e927-568b-95e1-2665a8aea6a2",
    );
  });
});
