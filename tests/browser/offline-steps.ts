import { expect, type Page } from "@playwright/test";

/** Visits the app once and waits until all of it is kept on the device. */
export async function visitOnce(page: Page, address = "/"): Promise<void> {
  await page.goto(address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller === null) {
      await new Promise((resolve) =>
        navigator.serviceWorker.addEventListener("controllerchange", resolve, { once: true }),
      );
    }
  });
}

/** A mark on the page that goes when the page is loaded anew: told from a change of screen within it. */
export async function markPage(page: Page): Promise<void> {
  await page.evaluate(() => document.documentElement.setAttribute("data-mark", "here"));
}

export async function expectSamePage(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.getAttribute("data-mark"))).toBe("here");
}
