import { describe, expect, test } from "vitest";
import { namesCase } from "../../app/offline/case-open.ts";
import { pageOf, recordOf } from "../../app/offline/kept-pages.ts";

const reading = { html: "/r.html", data: "/r.rsc" };
const list = { html: "/l.html", data: "/l.rsc" };
const pages = { "/read": reading, "/parts": list };

// Our own addresses, no published source.
describe("the page that is kept for an address", () => {
  test("is its own, or for a record the one that sets any record", () => {
    expect(pageOf("/parts", pages)).toBe(list);
    expect(pageOf("/parts/drop-link-2", pages)).toBe(reading);
    expect(pageOf("/checks/a", pages)).toBe(reading);
    expect(pageOf("/findings/b", pages)).toBe(reading);
  });

  test.each([
    "/nowhere",
    "/parts/",
    "/parts/a/b",
    "/parts/A",
    "/parts/..",
    "/api/v1/me",
    "/__proto__",
    "/constructor",
  ])("is none for %s", (address) => {
    expect(pageOf(address, pages)).toBeUndefined();
    expect(pageOf(address.slice(1), pages)).toBeUndefined();
  });

  test("names its record by kind and id", () => {
    expect(recordOf("/findings/play-3-9")).toEqual({ kind: "findings", id: "play-3-9" });
    expect(recordOf("/read")).toBeUndefined();
  });
});

describe("an address of a case", () => {
  test.each([
    ["/case", "?id=a1", true],
    ["/case/card", "?id=a1", true],
    ["/shop/play", "?case=a1", true],
    ["/case/new", "", false],
    ["/case", "", false],
    ["/cases", "?id=a1", false],
    ["/search", "?q=case", false],
    ["/", "", false],
  ])("%s%s: %s", (pathname, search, names) => {
    expect(namesCase({ pathname, search })).toBe(names);
  });
});
