import { describe, expect, it } from "vitest";
import { checksCsv } from "../../lib/case/checks-csv.ts";
import { made, note, opening, second } from "../support/made-entries.ts";

const HEADING = "at,by,check,finding,result,level,value,circle mm,words,taken back";
const answer = (id: string, fields: Record<string, unknown> = {}, at = second(1)) =>
  made("c", id, at, {
    kind: "answered",
    finding: "play-3-9@front-left",
    state: "present",
    how: "check",
    check: "rock-wheel@front-left",
    ...fields,
  });

/** Lines without the heading. */
const lines = (...entries: Parameters<typeof checksCsv>[0][]): string[] => {
  const text = checksCsv([opening("c"), ...entries.flatMap((some) => [...some])]);
  expect(text.endsWith("\r\n")).toBe(true);
  const [heading, ...rest] = text.slice(0, -2).split("\r\n");
  expect(heading).toBe(HEADING);
  return rest;
};

describe("the checks of a case as CSV", () => {
  it("hold what was found by hand and what was not possible, by time, and nothing that was told", () => {
    const found = lines([
      made("c", "np", second(3), { kind: "not-possible", check: "road-test", reason: "wet, no plates" }),
      answer("a", { value: -1.5, level: "clear", circleMm: 380 }, second(2)),
      answer("t", { how: "report" }),
      note("c", "n"),
    ]);
    expect(found).toEqual([
      `${second(2)},ben,rock-wheel@front-left,play-3-9@front-left,present,clear,-1.5,380,,no`,
      `${second(3)},ben,road-test,,not possible,,,,"wet, no plates",no`,
    ]);
  });

  it("say what was taken back", () => {
    const back = made("c", "r", second(5), { kind: "retracted", entry: "a" });
    expect(lines([answer("a"), back])).toEqual([
      `${second(1)},ben,rock-wheel@front-left,play-3-9@front-left,present,,,,,yes`,
    ]);
  });

  it("are a heading alone when there are none, and take names in place of ids", () => {
    expect(checksCsv([opening("c")])).toBe(`${HEADING}\r\n`);
    const named = checksCsv([opening("c"), answer("a")], {
      check: () => "Rock, front left",
      finding: (id) => id,
    });
    expect(named).toContain(',"Rock, front left",play-3-9@front-left,');
  });

  // RFC 4180, 2.6 and 2.7: fields with line breaks, quotes and commas stand in quotes, a quote is doubled.
  it.each([
    ['b"bb', '"b""bb"'],
    ["a,b", '"a,b"'],
    ["two\r\nlines", '"two\r\nlines"'],
  ])("quote %j", (words, field) => {
    expect(checksCsv([opening("c"), answer("a", { words })])).toContain(`,,,,${field},no\r\n`);
  });

  // OWASP, "CSV Injection": cells that begin with = + - @ tab, return or line feed, and their full-width forms.
  it.each([
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "\n=1",
    "\uFF1D1",
    "\uFF0B1",
    "\uFF0D1",
    "\uFF201",
  ])("are not taken for a formula: %j", (words) => {
    const text = checksCsv([opening("c"), answer("a", { words }), { ...note("c", "n"), by: "=x" }]);
    expect(text).toContain(`,"'${words}",no\r\n`);
    const who = checksCsv([opening("c"), { ...answer("a"), by: `${words},x` }]);
    expect(who).toContain(`,"'${words},x",`);
  });
});
