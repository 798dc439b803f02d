import { describe, expect, it } from "vitest";
import { z } from "zod";
import { backOffMs } from "../../app/sync/back-off.ts";
import { nextBatch } from "../../app/sync/batch.ts";
import { replyOf } from "../../app/sync/door.ts";
import { keptWords, keptWordsOfAll } from "../../app/sync/kept-words.ts";
import { meaningOfPulled, meaningOfSent } from "../../app/sync/meaning.ts";
import { nextStep } from "../../app/sync/plan.ts";
import { readReply } from "../../app/sync/read-reply.ts";
import type { Entry } from "../../lib/case/index.ts";

const headers = (type: string, more: Record<string, string> = {}) =>
  new Headers({ "content-type": type, ...more });

describe("a reply of the server", () => {
  // Members and media type as RFC 9457 has them (3 and 3.1); Retry-After in seconds as RFC 9110 has it (10.2.3).
  it("is read as problem details", () => {
    const text = JSON.stringify({
      type: "/problems/bad-input",
      title: "Cannot be read",
      status: 422,
      detail: "Entry 2 has no time.",
      fields: [{ path: "entries.1.at", message: "give a time" }, { path: 3 }],
    });
    const read = replyOf(
      422,
      headers("application/problem+json; charset=utf-8", { "retry-after": "7" }),
      text,
    );
    expect(read).toMatchObject({
      status: 422,
      retryAfterMs: 7000,
      problem: {
        code: "bad-input",
        title: "Cannot be read",
        detail: "Entry 2 has no time.",
        fields: [{ path: "entries.1.at", message: "give a time" }],
      },
    });
    expect(meaningOfSent(read)).toEqual({
      is: "refused",
      trouble: { code: "bad-input", detail: "Entry 2 has no time." },
    });
  });

  it("is read by its form, or not at all", () => {
    const Form = z.object({ id: z.string() });
    const of = (status: number, text: string) =>
      readReply(replyOf(status, headers("application/json"), text), Form);
    expect(of(200, '{"id":"a","more":1}')).toEqual({ id: "a" });
    expect(of(201, '{"id":"a"}')).toEqual({ id: "a" });
    expect(of(200, '{"id":1}')).toBeUndefined();
    expect(of(404, '{"id":"a"}')).toBeUndefined();
    expect(readReply({ is: "lost" }, Form)).toBeUndefined();
    expect(readReply(undefined, Form)).toBeUndefined();
  });

  it.each([
    [404, "text/html", "<h1>Not found</h1>", "no-server"],
    [405, "text/plain", "", "no-server"],
    [200, "text/html", "<h1>Sign in to the network of the hotel</h1>", "lost"],
    [502, "text/html", "Bad gateway", "lost"],
    [200, "application/json", "{ not json", "lost"],
    [200, "application/json", '{"version":"1"}', "lost"],
    [401, "application/problem+json", '{"type":"/problems/sign-in"}', "sign-in"],
    [503, "application/problem+json", '{"type":"/problems/no-owner-yet"}', "owner-needed"],
    [503, "application/problem+json", '{"type":"/problems/disk-full"}', "busy"],
    [507, "application/problem+json", '{"type":"/problems/disk-full"}', "busy"],
    [500, "application/problem+json", '{"type":"/problems/stumbled"}', "stumbled"],
    [403, "application/problem+json", '{"type":"/problems/forbidden"}', "stopped"],
    [410, "application/problem+json", '{"type":"/problems/case-removed"}', "stopped"],
    [409, "application/problem+json", '{"type":"/problems/entry-differs"}', "refused"],
  ])("%i as %s means that it is %s", (status, type, text, is) => {
    expect(meaningOfSent(replyOf(status, headers(type), text)).is).toBe(is);
  });

  it("does not take in entries of another case", () => {
    const entry = {
      id: "x",
      caseId: "other",
      at: "2026-11-28T09:00:00.000Z",
      by: "a",
      kind: "note",
      text: "t",
    };
    const text = JSON.stringify({ version: 1, entries: [{ seq: 1, entry }] });
    expect(meaningOfPulled(replyOf(200, headers("application/json"), text), "mine")).toMatchObject({
      entries: [],
      unread: 1,
      upTo: 1,
    });
  });
});

describe("the plan", () => {
  const one = {
    caseId: "a",
    sendable: 0,
    after: 0,
    heard: 0,
    asked: false,
    open: false,
    stopped: false,
    notBefore: 0,
  };
  it("sends before it fetches, and what is on the screen before the rest", () => {
    const cases = [
      { ...one, caseId: "a", asked: true },
      { ...one, caseId: "b", sendable: 3 },
      { ...one, caseId: "c", heard: 2, open: true },
      { ...one, caseId: "d", sendable: 1, open: true },
    ];
    const order: string[] = [];
    for (let left = cases; left.length > 0; ) {
      const step = nextStep(left, 0, 0);
      if (step.do !== "send" && step.do !== "pull") throw new Error("It should work.");
      order.push(`${step.do} ${step.caseId}`);
      left = left.filter(({ caseId }) => caseId !== step.caseId);
    }
    expect(order).toEqual(["send d", "pull c", "send b", "pull a"]);
  });

  it("waits for the soonest, and never for a case that does not go out", () => {
    expect(nextStep([{ ...one, sendable: 1, notBefore: 500 }], 0, 200)).toEqual({ do: "wait", ms: 300 });
    expect(nextStep([{ ...one, sendable: 1 }], 900, 200)).toEqual({ do: "wait", ms: 700 });
    expect(nextStep([{ ...one, sendable: 1, heard: 4, stopped: true }], 0, 0)).toEqual({ do: "rest" });
    expect(nextStep([{ ...one, asked: true, stopped: true }], 0, 0)).toEqual({ do: "pull", caseId: "a" });
  });

  it("backs off between half and the whole of a doubling time, a minute at most", () => {
    for (let failures = 1; failures < 40; failures++) {
      const full = Math.min(60_000, 1000 * 2 ** (failures - 1));
      expect(backOffMs(failures, 0)).toBe(full / 2);
      expect(backOffMs(failures, 1)).toBe(full);
    }
  });

  it("fits a batch into what the server takes: 200 entries, 1 MB, and at least one", () => {
    const entry = (k: number, text: string): Entry => ({
      id: `e${k}`,
      caseId: "a",
      at: new Date(Date.UTC(2026, 0, 1) + k).toISOString(),
      by: "a",
      kind: "note",
      text,
    });
    expect(
      nextBatch(
        Array.from({ length: 500 }, (_, k) => entry(k, "t")),
        1000,
      ).length,
    ).toBe(200);
    const wide = nextBatch(
      Array.from({ length: 200 }, (_, k) => entry(k, "\u20ac".repeat(3900))),
      200,
    );
    expect(new TextEncoder().encode(JSON.stringify({ entries: wide })).length).toBeLessThan(1_000_000);
    expect(wide.length).toBeGreaterThan(10);
    expect(nextBatch([entry(1, "x".repeat(400_000))], 200).length).toBe(1);
  });
});

describe("where it is kept, in words", () => {
  const row = (id: string) => ({ id, caseId: "a" });
  const place = { caseId: "a", after: 2, version: 2 };
  it("says plainly what is here and what is there", () => {
    expect(keptWords({ is: "answers" }, [], place).text).toBe(
      "Kept on this device and on the workshop's server.",
    );
    expect(keptWords({ is: "no-server" }, [row("x")], undefined).text).toBe("Kept on this device.");
    expect(keptWords({ is: "away" }, [row("x"), row("y"), row("z")], place).text).toBe(
      "3 entries on this device only; they go out when the server answers.",
    );
    expect(keptWords({ is: "away" }, [row("x")], place).text).toBe(
      "1 entry on this device only; it goes out when the server answers.",
    );
    expect(keptWords({ is: "sign-in" }, [row("x")], place)).toMatchObject({ act: "sign-in", trouble: false });
    expect(keptWords({ is: "owner-needed" }, [], undefined).act).toBe("set-up");
  });

  it("never claims that the server has what it has not", () => {
    const here = [[], [{ ...row("x"), held: true as const }]];
    for (const unsent of here)
      expect(keptWords({ is: "answers" }, unsent, undefined).text).toBe("Kept on this device.");
    for (const is of ["answers", "unknown", "away", "sign-in", "owner-needed"] as const)
      expect(keptWords({ is }, [row("x")], place).text).not.toContain("and on the workshop's server");
  });

  it("puts trouble before everything and passes on what the server says", () => {
    const refused = { ...row("x"), refused: { code: "odd", detail: "It has no time" } };
    expect(keptWords({ is: "answers" }, [refused], place)).toEqual({
      trouble: true,
      text: "1 entry on this device only: the server does not take it. It has no time. It is tried again when the page is loaded anew.",
    });
    const full = { is: "away" as const, trouble: { code: "disk-full", detail: "Its disk is full" } };
    expect(keptWords(full, [row("x")], place).text).toContain("The server says: Its disk is full.");
    const removed = { ...place, trouble: { code: "case-removed" } };
    expect(keptWords({ is: "answers" }, [row("x")], removed)).toMatchObject({ trouble: true });
    expect(keptWordsOfAll({ is: "answers" }, [refused], [removed, place]).text).toMatch(
      /^One case does not go/,
    );
  });
});
