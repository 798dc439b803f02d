import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import type axe from "axe-core";

const DEMO_CASES = join(import.meta.dirname, "../../knowledge/demo-cases");
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

function demoTitles(): string[] {
  return readdirSync(DEMO_CASES).map((file) => {
    const demo = JSON.parse(readFileSync(join(DEMO_CASES, file), "utf8")) as { title: string };
    return demo.title;
  });
}

test.beforeEach(async ({ page }) => {
  await page.goto("/");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
});

test("the first page offers every invented case and says that they are invented @both", async ({ page }) => {
  const titles = demoTitles();
  expect(titles.length).toBeGreaterThan(0);
  for (const title of titles) await expect(page.getByText(title, { exact: false }).first()).toBeVisible();
  await expect(page.locator("body")).toContainText(/invented/i);
  await expect(page.locator("body")).not.toContainText(/\bsafe\b/i);
});

test("the first page fits its width and throws no error @both", async ({ page }) => {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  await page.reload();
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  expect(errors).toEqual([]);
});

// WCAG 2.2 A and AA as axe-core checks them, and AAA contrast (7:1), which this project asks of itself.
test("the first page breaks no accessibility rule that a machine can check @both", async ({ page }) => {
  await page.evaluate(AXE);
  const results = await page.evaluate(async () => {
    const { axe: runner } = window as unknown as { axe: typeof axe };
    return runner.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"],
      rules: { "color-contrast-enhanced": { enabled: true } },
    });
  });
  expect(results.passes.length).toBeGreaterThan(5);
  expect(results.violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
});
