import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { LINT_RULES } from "../../lib/knowledge/lint/index.ts";
import { axeFindings, servedKnowledge } from "./case-steps.ts";

const RELEASES = join(import.meta.dirname, "../../knowledge/releases");
const WORKED = join(import.meta.dirname, "../../knowledge/worked-cases");

async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
}

function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Links to a place on the page that is not there. */
function brokenAnchors(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLAnchorElement>('a[href^="#"]')]
      .map((link) => link.getAttribute("href")?.slice(1) ?? "")
      .filter((id) => document.getElementById(id) === null),
  );
}

test("the foot of the first page leads to versions and health, without any script too", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto("/parts");
  await page.getByRole("link", { name: "Health of the knowledge" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Health of the knowledge" })).toBeVisible();
  await page.getByRole("link", { name: "Versions of the knowledge" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Versions of the knowledge" })).toBeVisible();
  await context.close();
});

test("versions: every frozen release stands with its sum, and each change says what it makes of the worked cases", async ({
  page,
}) => {
  await page.goto("/releases");
  const versions = readdirSync(RELEASES);
  for (const version of versions) {
    const [sum = ""] = readFileSync(join(RELEASES, version, "SHA256SUMS"), "utf8").split(" ");
    await expect(page.locator("#versions li", { hasText: sum })).toContainText(`${version} frozen`);
  }
  const changes = page.locator("main > section:not(#versions)");
  const listed = await page.locator("#versions li").count();
  expect(listed).toBeGreaterThanOrEqual(versions.length);
  await expect(changes).toHaveCount(listed - 1);
  const cases = readdirSync(WORKED).length;
  for (const change of await changes.all())
    await expect(change).toContainText(`of ${cases} invented cases moved`);
});

test("health: counts are those of the knowledge that the app serves, and every rule is named", async ({
  page,
}) => {
  await page.goto("/health");
  const knowledge = await servedKnowledge(page);
  const fact = (name: string) => page.locator("#coverage .facts > div", { hasText: name }).locator("dd");
  await expect(fact("Parts")).toHaveText(String(knowledge.parts.length));
  await expect(fact("Ways to fail")).toHaveText(String(knowledge.faults.length));
  await expect(fact("Checks")).toHaveText(String(knowledge.checks.length));
  await expect(page.locator("#coverage tbody tr")).toHaveCount(knowledge.complaints.length);
  await openAll(page);
  await expect(page.locator("#rules dt")).toHaveText(LINT_RULES.map(({ name }) => name));
  await expect(page.locator("#shares tbody tr")).toHaveCount(knowledge.publishedShares?.rows.length ?? 0);
  for (const id of ["inseparable", "weakest", "unsourced"])
    await expect(page.locator(`#${id} p`).first()).toBeVisible();
  await page.locator("#inseparable a, #weakest a, #unsourced a").first().click();
  await expect(page).toHaveURL(/\/parts\//);
});

for (const colorScheme of ["light", "dark"] as const) {
  test(`versions and health pass axe and fit the screen with everything open, ${colorScheme} @both`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    for (const address of ["/releases", "/health"]) {
      await page.goto(address);
      await openAll(page);
      expect(await axeFindings(page), address).toEqual([]);
      expect(await overhang(page), address).toBe(0);
      expect(await brokenAnchors(page), address).toEqual([]);
    }
  });
}

test("on paper what is folded is printed too, and the way round the site is not", async ({ page }) => {
  await page.goto("/health");
  await page.emulateMedia({ media: "print" });
  await expect(page.locator("#rules dd").first()).toBeVisible();
  await expect(page.getByRole("navigation", { name: "About the knowledge" })).toBeHidden();
});
