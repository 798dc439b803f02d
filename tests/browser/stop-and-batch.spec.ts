import { expect, type Page, test } from "@playwright/test";
import { axeFindings, openCase, takeAll } from "./case-steps.ts";

/** Row of the stop table by its way. */
function way(page: Page, name: string) {
  return page.locator("#choices tbody tr").filter({ has: page.getByRole("rowheader", { name }) });
}

async function compared(page: Page): Promise<void> {
  await expect(page.locator("#choices")).toHaveAttribute("aria-busy", "false");
  await expect(way(page, "Repair now")).toBeVisible();
}

/** "8 h 44 min" or "97 min" as minutes. */
function asMinutes(words: string): number {
  const [, hours = "0", minutes = "NaN"] = /^(?:(\d+) h )?([\d.]+) min$/.exec(words) ?? [];
  return 60 * Number(hours) + Number(minutes);
}

const asNumber = (words: string): number => Number(words.replace(/[^\d.]/g, ""));

test("repairing, checking on and referring stand side by side, in time or in money @both", async ({
  page,
}) => {
  await openCase(page);
  await takeAll(page);
  await compared(page);
  for (const name of ["Repair now", "Check on", "Refer it"]) await expect(way(page, name)).toBeVisible();
  const minutes = asMinutes(await way(page, "Refer it").locator("td").innerText());
  await page.getByLabel("Show money instead of time").check();
  const money = asNumber(await way(page, "Refer it").locator("td").innerText());
  // An hour of work costs 90 by default: 1.5 a minute; half a minute and half a unit of rounding.
  expect(Math.abs(money - 1.5 * minutes)).toBeLessThanOrEqual(1.5 * 0.5 + 0.5);
  // The ways stand cheapest first.
  const costs = (await page.locator("#choices table").first().locator("td").allInnerTexts()).map(asNumber);
  expect(costs).toEqual(costs.toSorted((a, b) => a - b));
  expect(await page.locator("#choices").innerText()).not.toMatch(/\bsafe\b/i);
});

test("repairs stand in order of chance over cost", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await compared(page);
  const rows = page.locator("#choices table").nth(1).locator("tbody tr");
  const ratios: number[] = [];
  for (const row of await rows.all()) {
    const [chance = "", cost = ""] = await row.locator("td").allInnerTexts();
    ratios.push(asNumber(chance) / asMinutes(cost));
  }
  expect(ratios.length).toBeGreaterThan(1);
  // Chances are shown as whole per cents: half a per cent of 60 minutes or more.
  for (let k = 1; k < ratios.length; k++)
    expect(ratios[k] as number).toBeLessThanOrEqual((ratios[k - 1] as number) + 0.5 / 60);
});

test("own figures are kept on the device, and one that cannot be is named and not lost", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await compared(page);
  await page.getByLabel("Show money instead of time").check();
  const before = asNumber(await way(page, "Refer it").locator("td").innerText());
  await page.locator("summary", { hasText: "Your rates and prices" }).click();
  await expect(page.getByText("The figures shown in grey are invented.")).toBeVisible();
  const rate = page.getByLabel(/^An hour of work/);
  await rate.fill("180");
  await expect
    .poll(async () => asNumber(await way(page, "Refer it").locator("td").innerText()))
    .not.toBe(before);
  const doubled = asNumber(await way(page, "Refer it").locator("td").innerText());
  // Time costs twice as much; parts cost what they did.
  expect(doubled).toBeGreaterThan(1.5 * before);
  expect(doubled).toBeLessThanOrEqual(2 * before + 1);

  await rate.fill("a lot");
  await expect(page.getByText('"a lot" cannot be: give a number from 1 to 100000.')).toBeVisible();
  await expect.poll(async () => asNumber(await way(page, "Refer it").locator("td").innerText())).toBe(before);
  await page.reload();
  await compared(page);
  await page.locator("summary", { hasText: "Your rates and prices" }).click();
  await expect(rate).toHaveValue("a lot");
  await page.getByRole("button", { name: "Back to the invented figures" }).click();
  await expect(rate).toHaveValue("");
});

test("checks of one set-up are tapped through, their results come in one by one @both", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const batch = page.locator(".batch");
  await expect(batch).toBeVisible();
  await expect(batch).toContainText(/for all \d/);
  const lines = batch.locator("li");
  const names = await lines.locator("button > span:first-child").allInnerTexts();
  expect(names.length).toBeGreaterThan(1);
  await lines.first().getByRole("button").click();
  for (const [at, name] of names.entries()) {
    // The list stays as it was begun, whatever the results do to the ranking.
    expect(await lines.locator("button > span:first-child").allInnerTexts()).toEqual(names);
    await expect(page.locator("#open-check")).toContainText(name.split(",")[0] ?? name);
    await expect(batch.getByRole("status")).toContainText(`${at} of ${names.length} done`);
    const normal = page.getByRole("button", { name: /^All normal/ });
    if (await normal.isVisible()) await normal.click();
    else await page.locator("#results").getByRole("button", { name: "Not there" }).click();
    if (at === 0) {
      // The list outlasts the page.
      await expect(lines.first()).toContainText("done");
      await page.reload();
      await expect(batch.getByRole("status")).toContainText(`1 of ${names.length} done`);
      await lines.nth(1).getByRole("button").click();
    }
  }
  await expect(batch.getByRole("status")).toContainText("The list is through");
  // Undo takes the last result back; the check is to be made again.
  await page.getByRole("button", { name: /^Undo the last entry/ }).click();
  await expect(batch.getByRole("status")).toContainText(`${names.length - 1} of ${names.length} done`);
  await batch.getByRole("button", { name: "Leave the list" }).click();
  await expect(batch.getByRole("status")).toHaveCount(0);
});

test("the stop table and the list pass axe with everything open, dark @both", async ({ page }) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await openCase(page);
  await takeAll(page);
  await compared(page);
  await page.locator("summary", { hasText: "Your rates and prices" }).click();
  await page.getByLabel(/^An hour of work/).fill("a lot");
  await expect(page.locator(".batch")).toBeVisible();
  expect(await axeFindings(page)).toEqual([]);
});
