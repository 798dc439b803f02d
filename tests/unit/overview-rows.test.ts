import { describe, expect, it } from "vitest";
import { foldCase } from "../../lib/case/index.ts";
import type { CaseInList } from "../../app/store/use-cases.ts";
import type { CaseHead } from "../../app/sync/replies.ts";
import { agoWords } from "../../app/text/age.ts";
import { type Found, overviewRows } from "../../app/ui/cases/overview-rows.ts";
import { addressOf, NOTHING_PICKED, queryOf, readWanted, type Wanted } from "../../app/ui/cases/wanted.ts";
import { made, opening, second } from "../support/made-entries.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const levels = shippedKnowledge().advice?.levels ?? [];
const ids = levels.map(({ id }) => id);
const me = { account: "ana", name: "Ana" };

describe("what the address asks for", () => {
  const wanted: Wanted = {
    state: "all",
    levels: ["hold", "unknown"],
    who: "name:Ana & Ben",
    invented: "hidden",
    sort: "oldest",
    text: "van 12%",
  };

  it("is read as it was written, and as usual it is the bare address", () => {
    const { searchParams } = new URL(addressOf(wanted), "http://desk.example");
    expect(readWanted(searchParams, ids)).toEqual({ wanted, odd: [] });
    expect(addressOf(NOTHING_PICKED)).toBe("/");
    expect(readWanted(new URLSearchParams(), ids)).toEqual({ wanted: NOTHING_PICKED, odd: [] });
  });

  it("names what there is not and goes on without it", () => {
    const params = new URLSearchParams("sort=best&urgency=hold,red&who=them&state=open&colour=blue");
    expect(readWanted(params, ids)).toEqual({
      wanted: { ...NOTHING_PICKED, levels: ["hold"] },
      odd: ["who=them", "urgency=red", "sort=best", "colour=blue"],
    });
  });

  it("becomes what the server is asked for; without an account `me` is a name", () => {
    expect(queryOf(NOTHING_PICKED, me)).toBe("order=urgent&closed=0");
    expect(queryOf({ ...NOTHING_PICKED, who: "me" }, me)).toContain("who=me");
    expect(queryOf({ ...NOTHING_PICKED, who: "me" }, { account: undefined, name: "Ana" })).toContain(
      "who=name%3AAna",
    );
  });
});

const head = (id: string, level: string, openedAt: number, more: Partial<CaseHead> = {}): CaseHead => ({
  id,
  version: 1,
  openedAt: second(openedAt),
  changedAt: second(openedAt),
  customer: "",
  vehicle: id,
  invented: false,
  closed: false,
  urgency: { is: "level", level, current: true },
  ...more,
});

function item(id: string, openedAt: number, more: Partial<CaseInList> = {}, to?: string): CaseInList {
  const entries = [
    { ...opening(id, { vehicle: `here ${id}` }), at: second(openedAt) },
    ...(to === undefined ? [] : [made(id, `${id}-w`, second(openedAt), { kind: "assigned", to })]),
  ];
  return {
    id,
    state: foldCase(entries),
    lastAt: second(openedAt),
    waiting: 0,
    serverVersion: undefined,
    stuck: false,
    ...more,
  };
}

const HEADS = [
  head("r1", "recover", 5),
  head("h1", "hold", 1),
  head("h2", "hold", 9),
  head("c1", "careful", 2),
];
const found = (more: Partial<Found> = {}): Found => ({
  wanted: NOTHING_PICKED,
  me,
  levels,
  heads: HEADS,
  more: false,
  device: [],
  known: new Map(),
  searched: ({ state }) => state.vehicle,
  ...more,
});
const urgent = (level: string) => ({
  urgency: { is: "level" as const, level, danger: 1 },
  busy: false,
  problem: undefined,
});
const shown = (more: Partial<Found>): string[] => overviewRows(found(more)).map(({ id }) => id);

describe("cases of the server and of this device in one list", () => {
  it("stand in one order; what is not known yet comes right behind the gravest", () => {
    const device = [item("own", 3), item("new", 4)];
    expect(shown({ device, known: new Map([["own", urgent("hold")]]) })).toEqual([
      "r1",
      "new",
      "h1",
      "own",
      "h2",
      "c1",
    ]);
  });

  it("are shown once: as the server has them, unless this device is ahead", () => {
    const device = [item("h1", 1, { serverVersion: 3 }), item("c1", 2, { serverVersion: 3, waiting: 2 })];
    const rows = overviewRows(found({ device, known: new Map([["c1", urgent("recover")]]) }));
    expect(rows.map(({ id, vehicle }) => [id, vehicle])).toEqual([
      ["c1", "here c1"],
      ["r1", "r1"],
      ["h1", "h1"],
      ["h2", "h2"],
    ]);
    expect(rows[2]?.here?.id).toBe("h1");
  });

  it("of this device wait until the server's list has come as far", () => {
    const device = [item("own", 3), item("late", 30)];
    const known = new Map([
      ["own", urgent("hold")],
      ["late", urgent("careful")],
    ]);
    expect(shown({ device, known, more: true })).toEqual(["r1", "h1", "own", "h2", "c1"]);
    expect(shown({ device, known, more: false })).toContain("late");
  });

  it("that the server does not list are not brought back, except by words that it does not search", () => {
    const device = [item("closed-there", 3, { serverVersion: 2 })];
    expect(shown({ device })).toEqual(["r1", "h1", "h2", "c1"]);
    const text = { ...NOTHING_PICKED, text: "clunk" };
    expect(shown({ device, heads: [], wanted: text, searched: () => "A clunk" })).toEqual(["closed-there"]);
    expect(shown({ device: [item("h1", 1, { serverVersion: 3, stuck: true })], heads: [] })).toEqual(["h1"]);
  });

  it("stand alone when the server is away, narrowed by the device itself", () => {
    const device = [item("a", 3, { serverVersion: 2 }, "Ben"), item("b", 4, { serverVersion: 2 })];
    const known = new Map([
      ["a", urgent("careful")],
      ["b", urgent("hold")],
    ]);
    const alone = { heads: undefined, device, known };
    expect(shown(alone)).toEqual(["b", "a"]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, levels: ["careful"] } })).toEqual(["a"]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, who: "nobody" } })).toEqual(["b"]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, who: "name:Ben" } })).toEqual(["a"]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, who: "me" } })).toEqual([]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, sort: "changed" } })).toEqual(["b", "a"]);
    expect(shown({ ...alone, wanted: { ...NOTHING_PICKED, state: "closed" } })).toEqual([]);
  });
});

describe("how long ago", () => {
  const now = Date.UTC(2026, 2, 1);
  const ago = (seconds: number): string => agoWords(new Date(now - 1000 * seconds).toISOString(), now);
  it.each([
    [-30, "just now"],
    [59, "just now"],
    [60, "1 minute ago"],
    [7199, "119 minutes ago"],
    [7200, "2 hours ago"],
    [3 * 86_400, "3 days ago"],
    [13 * 86_400, "13 days ago"],
    [14 * 86_400, "2 weeks ago"],
    [100 * 86_400, "3 months ago"],
    [800 * 86_400, "2 years ago"],
  ])("%i seconds: %s", (seconds, words) => {
    expect(ago(seconds)).toBe(words);
  });
});
