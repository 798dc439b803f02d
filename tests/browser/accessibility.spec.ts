import { expect, test } from "@playwright/test";
import { firstSuspect, openCase, takeAll } from "./case-steps.ts";
import { look } from "./look.ts";

for (const colorScheme of ["light", "dark"] as const) {
  test(`every screen passes axe, 7:1 contrast and target sizes, ${colorScheme} @both`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.emulateMedia({ colorScheme });
    await page.goto("/");
    await expect(page.locator("#demo-cases li").first()).toBeVisible();
    await look(page, "cases");

    await page.goto("/case/new");
    await expect(page.getByLabel("In the customer's own words")).toBeEnabled();
    await look(page, "new case");

    await openCase(page);
    await expect(page.getByRole("button", { name: /^Take all/ })).toBeVisible();
    await look(page, "case with proposals");

    await takeAll(page);
    await firstSuspect(page).click();
    await expect(page.locator(".weight").first()).toBeVisible();
    // What lies in a fold is made when it opens, folds within it too: open until none is shut.
    await expect
      .poll(() =>
        page.evaluate(() => {
          const shut = document.querySelectorAll<HTMLDetailsElement>("details:not([open])");
          for (const details of shut) details.open = true;
          return shut.length;
        }),
      )
      .toBe(0);
    await page.getByLabel("Search findings and checks by any name").fill("play");
    await expect(page.locator(".found").first()).toBeVisible();
    await expect(page.locator(".preview").first()).toBeVisible();
    await look(page, "case, everything open");

    // A check with grades, cautions and a measured result, if one is proposed.
    await page.locator("#next .line-button", { hasNotText: "Ask:" }).first().click();
    await expect(page.locator(".takes")).toBeVisible();
    await expect(page.locator(".preview").first()).toBeVisible();
    await look(page, "case with a check");

    await page.getByRole("button", { name: "Give the verdict" }).and(page.locator("[type=submit]")).click();
    await page.getByRole("link", { name: "Open the job card" }).click();
    await expect(page.getByRole("article")).toBeVisible();
    await look(page, "job card");

    await page.goto("/case?id=nobody");
    await expect(page.getByRole("heading", { name: "This case is not on this device" })).toBeVisible();
    await look(page, "case that is not here");

    await page.goto("/nowhere");
    await look(page, "no such page");
  });
}

test("on the phone the next thing to do is on the screen without scrolling", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const next = page.getByRole("navigation", { name: "Next" }).getByRole("button");
  await expect(next).toBeInViewport();
  await expect(next).toContainText("Next:");
  await next.click();
  await expect(page.locator("#open-check")).toBeInViewport();
});
