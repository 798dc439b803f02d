import { expect, type Page, test } from "@playwright/test";
import { openCase, rankingText, takeAll } from "./case-steps.ts";

/** Lines of the list whose cases are on this device; the server has those of other tests too. */
const keptHere = (page: Page) =>
  page.locator("#open-cases .case-line").filter({ has: page.getByRole("button", { name: /^Remove/ }) });

test("closing the page in the middle loses nothing that was typed or ticked", async ({ page, context }) => {
  await page.goto("/case/new");
  await page.getByLabel("In the customer's own words").fill("It knocks over cobb");
  await page.getByLabel("Vehicle").fill("half typed");
  await page.reload();
  await expect(page.getByLabel("In the customer's own words")).toHaveValue("It knocks over cobb");
  await expect(page.getByLabel("Vehicle")).toHaveValue("half typed");

  await openCase(page);
  await takeAll(page);
  const ranking = await rankingText(page);
  await page.getByLabel("Add a note").fill("half a no");
  const address = page.url();
  await page.close();

  const again = await context.newPage();
  await again.goto(address);
  await expect(again.locator("#ranking ol")).toHaveText(/./);
  expect(await rankingText(again)).toBe(ranking);
  await expect(again.getByLabel("Add a note")).toHaveValue("half a no");

  await again.goto("/");
  await expect(keptHere(again).getByRole("link", { name: /invented hatchback/ })).toBeVisible();
});

test("results gathered for a check stay while the page is closed", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await page.getByText("Other good checks and questions").click();
  const lines = page.locator("#next .line-button");
  const check = lines.filter({ hasNotText: "Ask:" }).first();
  await check.click();
  const several = page.locator("#results fieldset");
  const address = page.url();
  if ((await several.count()) > 1) {
    await several.first().getByRole("button", { name: "Not there" }).click();
    await expect(page.getByRole("button", { name: /^Save 1 of/ })).toBeEnabled();
    const title = await page.locator("#open-check").innerText();
    await page.goto(address);
    await page.getByText("Other good checks and questions").click();
    await page
      .locator("#next .line-button", { hasText: title.split(",")[0] ?? title })
      .first()
      .click();
    await expect(page.getByRole("button", { name: /^Save 1 of/ })).toBeEnabled();
  } else {
    await several.getByRole("button", { name: "Not there" }).click();
    await page.goto(address);
    await expect(page.locator("#timeline")).toContainText("checked");
  }
});

test("undo brings the ranking back, and undoing the undo as well @both", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const lines = page.locator("#timeline li");
  const newest = lines.first();
  const before = await rankingText(page);
  const entries = await lines.count();

  await page.locator("#results button").first().click();
  await expect(lines).not.toHaveCount(entries);
  await expect.poll(() => rankingText(page)).not.toBe(before);
  const after = await rankingText(page);

  // One tap may have given several answers; one undo takes all of them back.
  await page.getByRole("button", { name: /^Undo the last entry/ }).click();
  await expect(newest).toContainText("Taken back");
  await expect.poll(() => rankingText(page)).toBe(before);

  const back = page.locator("#timeline").getByRole("button", { name: /^Bring back/ });
  const taken = await back.count();
  for (let k = 0; k < taken; k++) {
    // Each bringing back is an entry of its own, on top, which can be taken back in turn.
    const count = await lines.count();
    await back.nth(k).click();
    await expect(lines).toHaveCount(count + 1);
  }
  await expect.poll(() => rankingText(page)).toBe(after);
});

test("an answer is ranked and kept without a network", async ({ page, context }) => {
  await openCase(page);
  await takeAll(page);
  const before = await rankingText(page);
  await context.setOffline(true);
  const entries = await page.locator("#timeline li").count();
  await page.locator("#results button").first().click();
  await expect(page.locator("#timeline li")).not.toHaveCount(entries);
  expect(await rankingText(page)).not.toBe(before);
  await expect(page.locator(".kept-line")).toContainText("on this device only");
  await context.setOffline(false);
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
});

test("a case goes out as a file and comes in again elsewhere", async ({ page, browser }) => {
  await openCase(page);
  await takeAll(page);
  const ranking = await rankingText(page);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save a copy as a file" }).click();
  const path = await (await download).path();

  const elsewhere = await browser.newContext({ locale: "en-GB", timezoneId: "Europe/London" });
  const other = await elsewhere.newPage();
  await other.goto("/");
  await other.locator("input[type=file]").setInputFiles(path);
  await keptHere(other)
    .getByRole("link", { name: /invented hatchback/ })
    .click();
  await expect(other.locator("#ranking ol")).toHaveText(/./);
  expect(await rankingText(other)).toBe(ranking);
  await elsewhere.close();
});

test("words are text and never markup", async ({ page }) => {
  const hostile = 'A clunk <img src=x onerror="document.title=1"> over small bumps <b>always</b>';
  await openCase(page, hostile);
  await expect(page.locator(".told")).toHaveText(hostile);
  await expect(page.locator("main img, main b")).toHaveCount(0);
  await expect(page).toHaveTitle(/Case/);
});
