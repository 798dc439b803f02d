import { expect, type Page, test } from "@playwright/test";
import { axeFindings, firstSuspect, servedKnowledge, takeAll, WORDS } from "./case-steps.ts";
import { expectSamePage, markPage, visitOnce } from "./offline-steps.ts";

test.use({ serviceWorkers: "allow" });

const NO_NETWORK = "No network: everything is kept on this device.";

/** Errors of the page itself from here on; that the network is away is no such error. */
function errorsOf(page: Page): string[] {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  return errors;
}

test("after one visit a case is opened, worked on and read up on with no network at all", async ({
  page,
  context,
}) => {
  const errors = errorsOf(page);
  await visitOnce(page);
  await expect(page.getByText(NO_NETWORK)).toBeHidden();
  await context.setOffline(true);
  await expect(page.getByText(NO_NETWORK)).toBeVisible();
  expect(await axeFindings(page)).toEqual([]);
  await page.reload();
  await markPage(page);

  await page.getByRole("link", { name: "New case" }).click();
  await page.getByLabel("In the customer's own words").fill(WORDS);
  await page.getByLabel("Vehicle").fill("invented hatchback");
  await page.getByRole("button", { name: "Open the case and read it" }).click();
  await takeAll(page);
  const check = await page.locator("#open-check").innerText();
  const entries = await page.locator("#timeline li").count();
  await page.locator("#results button").first().click();
  await expect(page.locator("#timeline li")).not.toHaveCount(entries);
  await expect(page.locator("#open-check")).not.toHaveText(check);
  await expect(page.locator("#ranking")).toHaveAttribute("aria-busy", "false");

  // To a page of the knowledge that was never visited, and back: still the same page load, what is half done is there.
  await firstSuspect(page).click();
  const about = page.locator('#ranking a[href^="/parts/"]').first();
  const href = (await about.getAttribute("href")) ?? "";
  await about.click();
  await page.waitForURL(`**${href}`);
  await expect(page.locator(".know-kind")).toHaveText("Part");
  await page.getByRole("link", { name: /^Back to the case/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "invented hatchback" })).toBeVisible();
  await expectSamePage(page);

  // The tab is closed and the case opened again, and its job card: all without a network.
  const address = page.url();
  await page.close();
  const again = await context.newPage();
  const later = errorsOf(again);
  await again.goto(address);
  await expect(firstSuspect(again)).toBeVisible();
  await again.goto(address.replace("/case?", "/case/card?"));
  await expect(again.getByRole("article")).toBeVisible();

  await context.setOffline(false);
  await expect(again.getByText(NO_NETWORK)).toBeHidden();
  await again.reload();
  await expect(again.getByRole("article")).toBeVisible();
  expect([...errors, ...later]).toEqual([]);
});

test("every kind of page opens from its address without a network, and says what it says with one", async ({
  page,
  context,
}) => {
  test.setTimeout(180_000);
  const errors = errorsOf(page);
  const knowledge = await servedKnowledge(page);
  const last = (records: readonly { readonly id: string }[]): string => records.at(-1)?.id ?? "";
  const records = [
    `/parts/${last(knowledge.parts)}`,
    `/checks/${last(knowledge.checks)}`,
    `/findings/${last(knowledge.complaints)}`,
    `/findings/${last(knowledge.features)}`,
    `/findings/${last(knowledge.observations)}`,
    `/findings/${last(knowledge.contexts)}`,
  ];
  // As the server made it: no service worker is there yet.
  const served: Record<string, string> = {};
  for (const address of records) {
    const html = await (await page.request.get(address)).text();
    served[address] = await page.evaluate(
      (text) =>
        (new DOMParser().parseFromString(text, "text/html").querySelector("main")?.textContent ?? "").trim(),
      html,
    );
    expect(served[address].length, address).toBeGreaterThan(50);
  }
  await visitOnce(page);
  await context.setOffline(true);
  for (const address of records) {
    await page.goto(address);
    await expect(page.locator("main.know-sheet")).toBeVisible();
    expect(await page.locator("main").evaluate((main) => main.textContent.trim()), address).toBe(
      served[address],
    );
    await expect(page).toHaveTitle(/ - Cornerwise$/);
  }
  for (const [address, heading] of [
    ["/parts", "Parts"],
    ["/checks", "Checks"],
    ["/findings", "Findings"],
    ["/health", "Health of the knowledge"],
    ["/releases", "Versions of the knowledge"],
    ["/shop/play", "Free play, run-out and wear limits"],
    ["/shop/rotating", "Turning parts"],
    ["/shop/shake", "Measure a shake"],
    ["/parts/nothing-by-that-name", "There is no such page"],
    ["/nowhere", "This page is not here"],
  ] as const) {
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1, name: heading })).toBeVisible();
  }
  await page.goto("/search?q=joint");
  await expect(page.locator(".know-list .row-link").first()).toBeVisible();
  expect(errors).toEqual([]);
});

test("links between pages of the knowledge change the screen, not the page, and start at the top", async ({
  page,
  context,
}) => {
  await visitOnce(page);
  await context.setOffline(true);
  await page.reload();
  await markPage(page);
  await page.getByRole("link", { name: "Search", exact: true }).click();
  await page.getByRole("searchbox").fill("joint");
  await page.locator(".know-list .row-link").first().click();
  await expect(page.locator(".know-kind")).toBeVisible();
  const title = await page.getByRole("heading", { level: 1 }).innerText();
  await expect(page).toHaveTitle(`${title} - Cornerwise`);
  const next = page.locator('main a[href^="/findings/"]').filter({ visible: true }).last();
  await next.scrollIntoViewIfNeeded();
  await next.click();
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText(title);
  await expect(page.getByRole("heading", { level: 1 })).toBeInViewport();
  await page.goBack();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
  await expectSamePage(page);
});

test("the app can be installed: a manifest with its icons, as browsers ask for", async ({
  page,
  request,
}) => {
  await page.goto("/");
  const href = await page.locator('link[rel="manifest"]').getAttribute("href");
  const manifest = (await (await request.get(href ?? "")).json()) as {
    name: string;
    start_url: string;
    display: string;
    icons: { src: string; sizes: string; type: string; purpose?: string }[];
  };
  // Web Application Manifest (W3C): name, start_url and display; Chromium's own criteria ask for icons of 192 and 512 pixels.
  expect(manifest).toMatchObject({ name: "Cornerwise", start_url: "/", display: "standalone" });
  expect(manifest.icons.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(["192x192", "512x512"]));
  for (const { src, sizes } of manifest.icons) {
    const size = await page.evaluate(async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      return `${image.naturalWidth}x${image.naturalHeight}`;
    }, src);
    expect(size, src).toBe(sizes);
  }
  const cdp = await page.context().newCDPSession(page);
  const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
  // The browser of the tests is a private window, in which nothing can be installed.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== "in-incognito")).toEqual(
    [],
  );
});
