import { expect, type Page, test } from "@playwright/test";
import { axeFindings, firstSuspect, takeAll, WORDS } from "./case-steps.ts";
import { expectSamePage, markPage, visitOnce } from "./offline-steps.ts";
import { serveTwoVersions, type TwoVersions } from "./two-versions.ts";

test.use({ serviceWorkers: "allow" });

let served: TwoVersions;

test.beforeEach(async ({ baseURL }) => {
  served = await serveTwoVersions(baseURL ?? "");
});
test.afterEach(() => served.close());

/** Which build the page on the screen is of. */
function buildOf(page: Page): Promise<"first" | "second"> {
  return page.evaluate(() =>
    document.querySelector('script[src*="/second-chunks/"]') === null ? "first" : "second",
  );
}

/** Looks for a newer version, as a browser does by itself from time to time, and waits until it lies ready. */
async function fetchNewVersion(page: Page): Promise<void> {
  served.release();
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
  });
  await expect
    .poll(() => page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state ?? "none"))
    .toBe("installed");
}

test("an open case goes on with the version it was opened in until somebody takes the new one", async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  await visitOnce(page, `${served.url}/`);
  await page.getByRole("link", { name: "New case" }).click();
  await page.getByLabel("In the customer's own words").fill(WORDS);
  await page.getByLabel("Vehicle").fill("invented hatchback");
  // Before the reasoning was ever started: its files are still to be loaded.
  await fetchNewVersion(page);
  await page.getByRole("button", { name: "Open the case and read it" }).click();
  await takeAll(page);
  const ranking = await page.locator("#ranking ol").innerText();
  expect(await buildOf(page)).toBe("first");

  // Reading on the side, too, stays within the version and the page.
  await markPage(page);
  await firstSuspect(page).click();
  await page.locator('#ranking a[href^="/parts/"]').first().click();
  await expect(page.locator(".know-kind")).toHaveText("Part");
  await page.getByRole("link", { name: /^Back to the case/ }).click();
  await expect(firstSuspect(page)).toBeVisible();
  await expectSamePage(page);

  // Nor does a load of the page change it, with the network or without.
  await page.reload();
  await expect(firstSuspect(page)).toBeVisible();
  expect(await buildOf(page)).toBe("first");
  await context.setOffline(true);
  await page.reload();
  await expect(firstSuspect(page)).toBeVisible();
  expect(await buildOf(page)).toBe("first");
  await context.setOffline(false);

  const use = page.getByRole("button", { name: "Use the new version" });
  const { height = 0 } = (await use.boundingBox()) ?? {};
  expect(height).toBeGreaterThanOrEqual(48);
  expect(await axeFindings(page)).toEqual([]);
  await use.click();
  await expect.poll(() => buildOf(page).catch(() => "loading")).toBe("second");
  await expect(firstSuspect(page)).toBeVisible();
  await expect(use).toBeHidden();
  await expect(page.locator("#ranking")).toHaveAttribute("aria-busy", "false");
  expect(await page.locator("#ranking ol").innerText()).toBe(ranking);

  // And the new version works without a network as the old one did.
  await context.setOffline(true);
  await page.reload();
  await expect(firstSuspect(page)).toBeVisible();
  expect(await buildOf(page)).toBe("second");
});

test("with no case open a load of the page brings the new version", async ({ page }) => {
  await visitOnce(page, `${served.url}/`);
  await fetchNewVersion(page);
  expect(await buildOf(page)).toBe("first");
  await page.reload();
  await expect.poll(() => buildOf(page).catch(() => "loading")).toBe("second");
  await expect(page.getByRole("heading", { level: 1, name: "Cases" })).toBeVisible();
});

test("a tab without a case does not take an open case in another tab to the new version", async ({
  page,
  context,
}) => {
  await visitOnce(page, `${served.url}/`);
  await page.locator("#demo-cases button").first().click();
  await expect(page.getByRole("button", { name: /^Take all/ })).toBeVisible();
  await fetchNewVersion(page);
  const other = await context.newPage();
  await other.goto(`${served.url}/`);
  const use = other.getByRole("button", { name: "Use the new version" });
  await expect(use).toBeVisible();
  expect(await buildOf(other)).toBe("first");

  // Taken there all the same, the case is told and stays on the screen.
  await use.click();
  await expect.poll(() => buildOf(other).catch(() => "loading")).toBe("second");
  await expect(page.getByText("Another tab has changed to a new version")).toBeVisible();
  await takeAll(page);
  expect(await buildOf(page)).toBe("first");
  await page.getByRole("button", { name: "Load this page anew" }).click();
  await expect.poll(() => buildOf(page).catch(() => "loading")).toBe("second");
  await expect(firstSuspect(page)).toBeVisible();
});
