import { describe, expect, test } from "vitest";
import { moveInlineScripts, refusedByPolicy } from "../../lib/scripts/inline-scripts.mjs";

/** The code that a page runs, in the order in which a browser meets it: HTML Living Standard, "prepare the script element". */
function codeInOrder(page: string, files: ReadonlyMap<string, string>): string[] {
  return [...page.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)].map(([, attributes = "", code = ""]) => {
    const name = /src="\/made\/([^"]+)"/.exec(attributes)?.[1];
    return name === undefined ? (code === "" ? attributes.trim() : code) : (files.get(name) ?? "missing");
  });
}

const PAGE =
  '<html><head><script src="/a.js" async=""></script></head><body><p>text</p>' +
  '<script id="_R_">start()</script><script src="/b.js" async=""></script>' +
  "<script>push(1)</script><script>push(2)</script></body></html>";

describe("moving inline scripts into files", () => {
  const { page, files } = moveInlineScripts(PAGE, "/made");

  test("leaves no inline script and everything else as it was", () => {
    expect(refusedByPolicy(PAGE)).toEqual(["an inline script"]);
    expect(refusedByPolicy(page)).toEqual([]);
    expect(page.replace(/<script[\s\S]*?<\/script>/g, "")).toBe(
      PAGE.replace(/<script[\s\S]*?<\/script>/g, ""),
    );
  });

  test("keeps the order, and the attributes of a script that has some", () => {
    expect(codeInOrder(page, files)).toEqual([
      'src="/a.js" async=""',
      "start()",
      'src="/b.js" async=""',
      "push(1);\npush(2)",
    ]);
    expect(page).toMatch(/<script id="_R_" src="\/made\/[0-9a-f]{20}\.js"><\/script>/);
  });

  test("makes neither async nor deferred scripts, for the parser must wait for them", () => {
    for (const [tag] of page.matchAll(/<script[^>]*\/made\/[^>]*>/g)) expect(tag).not.toMatch(/async|defer/);
  });

  test("gives the same text the same name and another text another one", () => {
    const again = moveInlineScripts("<script>push(1)</script><script>push(2)</script>", "/made");
    const other = moveInlineScripts("<script>push(1)</script><script>push(3)</script>", "/made");
    expect([...again.files.keys()]).toEqual([...files.keys()].slice(1));
    expect([...other.files.keys()]).not.toEqual([...again.files.keys()]);
  });

  test("does nothing to a page that has none", () => {
    expect(moveInlineScripts(page, "/made")).toEqual({ page, files: new Map() });
  });
});

describe("what the policy would refuse (Content Security Policy Level 3, 'unsafe-inline')", () => {
  test.each([
    ['<button onclick="go()">', "an attribute onclick"],
    ['<p class="a" style="color:red">', "a style attribute"],
    ["<style>p{}</style>", "a style element"],
    ['<a href="javascript:go()">', "an address that is a script"],
  ])("finds it in %s", (html, found) => {
    expect(refusedByPolicy(`<html><body>${html}</body></html>`)).toEqual([found]);
  });

  test("is not found in the words of a text or of an attribute", () => {
    expect(
      refusedByPolicy('<p title="set onload= and style= there">onclick="x" style="y" javascript:</p>'),
    ).toEqual([]);
  });
});
