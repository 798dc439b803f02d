import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, type Page } from "@playwright/test";
import type { Result } from "axe-core";
import type axe from "axe-core";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/** A complaint as somebody may tell it; written for these tests. */
export const WORDS =
  "There is a clunk from the front left when I drive over small bumps and cobbles, and it is getting worse.";

/** Opens a new case with words typed by hand and waits until they are read. */
export async function openCase(page: Page, words = WORDS): Promise<void> {
  await page.goto("/");
  await page.getByRole("link", { name: "New case" }).click();
  await page.getByLabel("In the customer's own words").fill(words);
  await page.getByLabel("Vehicle").fill("invented hatchback");
  await page.getByRole("button", { name: "Open the case and read it" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "invented hatchback" })).toBeVisible();
}

/** Takes everything that was read, and waits for the ranking and the next check. */
export async function takeAll(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Take all/ }).click();
  await expect(firstSuspect(page)).toBeVisible();
  await expect(page.locator("#open-check")).toBeVisible();
}

/** The button of the likeliest suspect. */
export function firstSuspect(page: Page) {
  return page.locator("#ranking ol button").first();
}

/** The whole ranking as text, top first, once it has caught up with the last answer. */
export async function rankingText(page: Page): Promise<string> {
  await expect(page.locator("#ranking")).toHaveAttribute("aria-busy", "false");
  const more = page.locator("#ranking").getByRole("button", { name: /^Show \d+ more$/ });
  if (await more.isVisible()) await more.click();
  return page.locator("#ranking ol").innerText();
}

/** The knowledge that the app under test serves. */
export async function servedKnowledge(page: Page): Promise<Knowledge> {
  return JSON.parse(await servedKnowledgeText(page)) as Knowledge;
}

/** Its text. */
export async function servedKnowledgeText(page: Page): Promise<string> {
  const index = (await (await page.request.get("/knowledge/index.json")).json()) as { sha256: string }[];
  return (await page.request.get(`/knowledge/${index[0]?.sha256}.json`)).text();
}

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Rule sets of WCAG 2.2 A and AA, good practice, and contrast of 7:1. */
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** What axe-core finds on the page as it stands, in words; empty when it finds nothing. */
export async function axeFindings(page: Page): Promise<string[]> {
  // Not by a script tag: the content security policy refuses it.
  await page.evaluate(AXE);
  const violations = await page.evaluate(async (tags): Promise<Result[]> => {
    const run = (window as unknown as { axe: typeof axe }).axe;
    const { violations: found } = await run.run(document, {
      runOnly: { type: "tag", values: tags },
      rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } },
    });
    return found;
  }, TAGS);
  return violations.flatMap((v) =>
    v.nodes.map((node) => `${v.id}: ${node.target.join(" ")}: ${node.failureSummary ?? v.help}`),
  );
}
