import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { look } from "./look.ts";

/** The file that a tap gives. */
async function savedFile(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  return readFileSync(await download.path(), "utf8");
}

test("an instructor draws an exercise, looks at it, hands it out, and takes it in again from its file", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto("/teach");
  await page.getByRole("button", { name: "Take in the twelve ready ones" }).click();
  await expect(page.getByRole("status").filter({ hasText: "12 exercises taken in." })).toBeVisible();
  await expect(page.locator("#exercises .case-line")).toHaveCount(12);
  await look(page, "exercises");

  await page.getByRole("link", { name: "Set or draw an exercise" }).click();
  await page.getByLabel("Topic").selectOption("shake");
  await page.getByRole("button", { name: "Draw one" }).click();
  const preview = page.locator("#preview");
  // What is drawn is chance: the page says when none as easy came up, and one draws again.
  await expect(async () => {
    const again = page.getByText("None as wanted came up");
    if (await again.isVisible()) await page.getByRole("button", { name: "Draw another" }).click();
    await expect(page.getByText("Drawn: easy.")).toBeVisible({ timeout: 10_000 });
  }).toPass({ timeout: 60_000 });
  await expect(preview).toContainText("Easy", { timeout: 20_000 });
  await expect(preview.locator(".best-way li").first()).toBeVisible();
  const hidden = await page.locator(".hidden-fault strong").allInnerTexts();

  // Nothing was saved so far, and nothing is lost.
  await page.reload();
  await expect(page.locator(".hidden-fault strong").first()).toBeVisible();
  expect(await page.locator(".hidden-fault strong").allInnerTexts()).toEqual(hidden);

  await page.getByRole("button", { name: "Save the exercise" }).click();
  await expect(page.getByText("Give it a name that gives nothing away.")).toBeVisible();
  await page.getByLabel("Name, as trainees see it").fill("Drawn for the browser (invented)");
  await page.getByRole("button", { name: "Save the exercise" }).click();
  await expect(page.getByText("Saved as it stands here.")).toBeVisible();

  await page.getByRole("button", { name: "Make a code and a link" }).click();
  // Letters and digits that cannot be taken for each other: no 0 and O, no 1, I and L.
  await expect(page.locator(".code-large")).toHaveText(/^[2-9A-HJKMNP-Z]{8}$/);
  await expect(page.getByLabel("Or this link, shown this once")).toHaveValue(/\/exercise#[\w-]{20,}$/);
  await look(page, "an exercise");

  const file = await savedFile(page);
  const sheet = page.getByRole("article");
  await page.getByRole("link", { name: "Worksheet" }).click();
  await expect(sheet).toContainText("Worksheet: Drawn for the browser");
  const behind = hidden[0] ?? "";
  expect((await sheet.innerText()).toLowerCase()).not.toContain(behind.toLowerCase());
  await look(page, "worksheet");
  await page.getByRole("link", { name: "Answer sheet" }).click();
  await expect(sheet).toContainText(behind);
  await expect(sheet.locator(".best-way li").first()).toBeVisible();
  await look(page, "answer sheet");

  await page.goto("/teach");
  await page.getByRole("button", { name: "Remove: Drawn for the browser (invented)" }).click();
  await page.getByRole("button", { name: "Take it out for good" }).click();
  await expect(page.locator("#exercises .case-line")).toHaveCount(12);
  await page.locator("input[type=file]").setInputFiles({
    name: "drawn.json",
    mimeType: "application/json",
    buffer: Buffer.from(file),
  });
  await page.getByRole("link", { name: "Drawn for the browser (invented)" }).click();
  await expect(page.locator(".hidden-fault strong").first()).toHaveText(behind);
  expect(await savedFile(page)).toBe(file);
});
