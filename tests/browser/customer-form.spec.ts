import { type Browser, expect, type Page, test } from "@playwright/test";
import { jpegWithPlace, segmentsOf } from "../support/made-pictures.ts";
import { servedKnowledge } from "./case-steps.ts";
import { look } from "./look.ts";
import { openNamed } from "./people-steps.ts";

/** The customer's phone: a browser of its own, with nobody signed in. */
async function phone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    ...{ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true },
    ...{ locale: "en-GB", timezoneId: "Europe/London" },
  });
  return context.newPage();
}

const title = (page: Page) => page.getByRole("heading", { level: 1 });

/** Says "Don't know" until nothing more is asked. */
async function knowNothing(page: Page): Promise<void> {
  for (let asked = 0; asked < 8 && (await page.locator("#form-progress").isVisible()); asked += 1) {
    const question = await title(page).innerText();
    await page.getByRole("button", { name: "Don't know" }).click();
    await expect(title(page)).not.toHaveText(question);
  }
}

test("a customer answers by a link on a phone, and the desk sees it as they do @desktop", async ({
  page,
  browser,
}) => {
  const knowledge = await servedKnowledge(page);
  const weak = knowledge.complaints.find(({ id }) => id === "brake-weak");
  const levels = knowledge.advice?.levels ?? [];
  await openNamed(page, "invented saloon");
  await page.getByText("Ask the customer by a link").click();
  await page.getByLabel("What the form says first").fill("Harbour Lane Garage (invented) asks:");
  await page.getByRole("button", { name: "Make a link for the customer" }).click();
  const address = await page.getByLabel("The link for the customer").inputValue();
  await expect(page.getByText("not opened yet")).toBeVisible();

  const customer = await phone(browser);
  await customer.goto(address);
  await expect(title(customer)).toHaveText("Questions about your invented saloon");
  await expect(customer.getByText("Harbour Lane Garage (invented) asks:")).toBeVisible();
  await look(customer, "start of the form");
  await customer.getByRole("button", { name: "Start" }).click();
  await customer.getByLabel("What have you noticed?").fill("The pedal sinks slowly.");
  // Nothing typed is lost with the page.
  await customer.reload();
  await customer.getByRole("button", { name: "Start" }).click();
  await look(customer, "words of the form");
  await customer.getByRole("button", { name: "Send and go on" }).click();
  await expect(page.locator("#from-customer")).toContainText("The pedal sinks slowly.");

  // No connection: said in words, kept, and sent by itself once there is one again.
  await expect(customer.locator("#form-progress")).toBeVisible();
  await look(customer, "question of the form");
  await customer.context().setOffline(true);
  await customer
    .getByRole("button", { name: weak?.lay?.choice ?? weak?.name ?? "none", exact: true })
    .click();
  await expect(customer.getByText("Nothing that you entered is lost.")).toBeVisible();
  await customer.context().setOffline(false);

  // The knowledge's own words for a level that speaks against driving: all but the last.
  const stop = customer.getByRole("alert", { name: "Stop notice" });
  await expect(stop).toBeVisible();
  const said = (await stop.innerText()).replaceAll(/\s+/g, " ");
  expect(levels.slice(0, -1).some(({ say }) => said.includes(say))).toBe(true);
  await look(customer, "stop words of the form");
  await expect(page.locator("#from-customer")).toContainText(weak?.lay?.choice ?? weak?.name ?? "none");

  // One back: the last answer is asked for again.
  const question = await title(customer).innerText();
  await customer.getByRole("button", { name: "Back" }).click();
  await expect(title(customer)).not.toHaveText(question);
  await expect(page.locator("#timeline")).toContainText("Taken back - the customer, by the form");
  await knowNothing(customer);

  await customer.locator("#photo-file").setInputFiles({
    ...{ name: "below.jpg", mimeType: "image/jpeg", buffer: await jpegWithPlace(400, 300) },
  });
  await customer.getByLabel("What does it show?").fill("the puddle");
  await look(customer, "photo of the form");
  await customer.getByRole("button", { name: "Send the photo" }).click();
  await expect(customer.getByText("1 photo has arrived.")).toBeVisible();
  await customer.getByRole("button", { name: "I am done" }).click();
  await expect(customer.getByRole("heading", { name: "What happens next" })).toBeVisible();
  await look(customer, "end of the form");

  const photo = page
    .locator("#from-customer")
    .getByRole("link", { name: "Open large: the puddle (the customer, by the form)" })
    .locator("img");
  await expect(photo).toBeVisible();
  await expect.poll(() => photo.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(400);
  const kept = await page.request.get((await photo.getAttribute("src")) ?? "");
  expect(segmentsOf(await kept.body()).filter((name) => name.startsWith("APP1"))).toEqual([]);
  await look(page, "case with what the customer said");
  await expect(page.getByText(/done, \d+ things said/)).toBeVisible({ timeout: 20_000 });

  // A list of links that does not arrive hides neither a link that is shown this once nor the list before it.
  let lost = 0;
  const lists = "**/api/v1/cases/*/links";
  await page.route(lists, async (route) => {
    if (route.request().method() !== "GET") return route.continue();
    await route.abort();
    lost += 1;
  });
  await page.getByRole("button", { name: "Make a link for the customer" }).click();
  await expect(page.getByLabel("The link for the customer")).not.toHaveValue(address);
  await expect.poll(() => lost).toBeGreaterThan(0);
  await expect(page.getByLabel("The link for the customer")).toBeVisible();
  await page.unroute(lists);
  await page.getByRole("button", { name: /^End it now/ }).click();
  await expect(page.getByText("not opened yet")).toBeVisible();
  await customer.reload();
  await expect(title(customer)).toHaveText("This link has run out");
  await customer.context().close();
});
