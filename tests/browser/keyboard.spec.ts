import { expect, type Page, test } from "@playwright/test";
import { WORDS } from "./case-steps.ts";

/** Presses Tab until the element with that name has the keyboard; fails when it cannot be reached. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 150; i++) {
    await page.keyboard.press("Tab");
    const label = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return "";
      const labels =
        element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement ? element.labels : null;
      return element.getAttribute("aria-label") ?? labels?.[0]?.textContent ?? element.textContent ?? "";
    });
    if (name.test(label)) return;
  }
  throw new Error(`${name} cannot be reached with the Tab key.`);
}

test("the whole job with the keyboard alone @desktop", async ({ page }) => {
  await page.goto("/");
  await tabTo(page, /^New case$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "New case" })).toBeVisible();
  await expect(page.getByLabel("In the customer's own words")).toBeEnabled();
  await tabTo(page, /own words/);
  await page.keyboard.type(WORDS);
  await tabTo(page, /^Open the case and read it$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Take all/ })).toBeVisible();
  await tabTo(page, /^Take all/);
  await page.keyboard.press("Enter");
  await expect(page.locator("#open-check")).toBeVisible();

  await tabTo(page, /Why\?$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Why it stands here" })).toBeVisible();
  await page.keyboard.press("Enter");

  // A mark of the drawing opens its suspect.
  await tabTo(page, /^2: /);
  await page.keyboard.press("Enter");
  await expect(page.locator("#ranking ol > li").nth(1).getByRole("button")).toHaveAttribute(
    "aria-expanded",
    "true",
  );
  await expect(page.locator("#ranking ol > li").nth(1).getByRole("button")).toBeFocused();

  const first = await page.locator("#open-check").innerText();
  await tabTo(page, /^(No|Not there|All normal.*)$/);
  const outline = await page.evaluate(() => {
    const element = document.activeElement;
    return element === null ? "" : getComputedStyle(element).outlineStyle;
  });
  expect(outline).toBe("solid");
  await page.keyboard.press("Enter");
  await expect(page.locator("#open-check")).not.toHaveText(first);
  // The keyboard goes on at the next check, not at the top of the page.
  await expect(page.locator("#next-title")).toBeFocused();

  await tabTo(page, /^Give the verdict$/);
  await page.keyboard.press("Enter");
  await tabTo(page, /^Open the job card$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("article")).toContainText(WORDS);
});
