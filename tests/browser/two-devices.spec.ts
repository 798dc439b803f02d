import { type Browser, type BrowserContext, expect, type Page, test } from "@playwright/test";
import { addNote, openNamed, timelineText } from "./people-steps.ts";

const BOTH = "Kept on this device and on the workshop's server.";

const kept = (page: Page) => page.locator(".kept-line");

/** A second device, on the same server as the test's own page. */
async function otherDevice(browser: Browser, page: Page): Promise<BrowserContext> {
  return browser.newContext({
    baseURL: new URL(page.url()).origin,
    locale: "en-GB",
    timezoneId: "Europe/London",
  });
}

test("two devices on one case, each cut off for a while, come to the same timeline @both", async ({
  page,
  context,
  browser,
}) => {
  const address = await openNamed(page, `invented estate ${test.info().project.name}`);
  const second = await otherDevice(browser, page);
  const other = await second.newPage();

  // From the list of the server, not by its address: it is fetched when it is opened. Looked for by its name, as the list shows
  // the most urgent first and other tests have left many there.
  await other.goto(`/?text=${encodeURIComponent(`invented estate ${test.info().project.name}`)}`);
  await other
    .locator("#open-cases")
    .getByRole("link", { name: `invented estate ${test.info().project.name}` })
    .click();
  await expect(other).toHaveURL(address);
  await expect(kept(other)).toHaveText(BOTH);
  expect(await timelineText(other)).toEqual(await timelineText(page));

  // What is entered on the one comes up on the other by itself, both ways.
  await addNote(page, "noted at the desk");
  await expect(other.locator("#timeline")).toContainText("noted at the desk");
  await addNote(other, "noted on the ramp");
  await expect(page.locator("#timeline")).toContainText("noted on the ramp");

  await context.setOffline(true);
  await second.setOffline(true);
  await addNote(page, "desk, cut off");
  await addNote(other, "ramp, cut off");
  await addNote(other, "ramp, still cut off");
  await expect(kept(page)).toHaveText("1 entry on this device only; it goes out when the server answers.");
  await expect(kept(other)).toHaveText("2 entries on this device only; they go out when the server answers.");
  await expect(page.locator("#timeline")).not.toContainText("ramp, cut off");

  await context.setOffline(false);
  await second.setOffline(false);
  for (const one of [page, other]) {
    await expect(kept(one)).toHaveText(BOTH);
    for (const text of ["desk, cut off", "ramp, cut off", "ramp, still cut off"])
      await expect(one.locator("#timeline .entry-words", { hasText: text })).toHaveCount(1);
  }
  expect(await timelineText(other)).toEqual(await timelineText(page));

  // Read again from what is kept, not from what is shown.
  await page.reload();
  await other.reload();
  await expect(kept(page)).toHaveText(BOTH);
  await expect(kept(other)).toHaveText(BOTH);
  expect(await timelineText(other)).toEqual(await timelineText(page));
  expect((await timelineText(page)).length).toBe(6);
  await second.close();
});

test("a page that is closed at once loses nothing: the next visit sends it", async ({ page, context }) => {
  const address = await openNamed(page, "invented van");
  await page.route("**/api/v1/cases/*/entries", (route) => route.abort());
  await addNote(page, "entered just before the battery died");
  await expect(kept(page)).toContainText("1 entry on this device only");
  await page.close();
  const again = await context.newPage();
  await again.goto(address);
  await expect(again.locator("#timeline")).toContainText("entered just before the battery died");
  await expect(kept(again)).toHaveText(BOTH);
});

test("an entry that the server refuses is kept, said, and holds up nothing else", async ({ page }) => {
  await openNamed(page, "invented pick-up");
  await page.route("**/api/v1/cases/*/entries", async (route) => {
    const body = route.request().postData() ?? "";
    if (!body.includes("made to be refused")) return route.continue();
    return route.fulfill({
      status: 422,
      contentType: "application/problem+json",
      body: JSON.stringify({
        type: "/problems/bad-input",
        title: "The input does not follow its form",
        status: 422,
        detail: "The note cannot be read",
      }),
    });
  });
  await addNote(page, "made to be refused");
  await expect(kept(page)).toContainText("1 entry on this device only: the server does not take it.");
  await expect(kept(page)).toContainText("The note cannot be read.");
  await addNote(page, "goes out all the same");
  const { pathname, searchParams } = new URL(page.url());
  expect(pathname).toBe("/case");
  const stored = async () =>
    (await page.request.get(`/api/v1/cases/${searchParams.get("id")}/entries`)).text();
  await expect.poll(stored).toContain("goes out all the same");
  expect(await stored()).not.toContain("made to be refused");
  await page.unroute("**/api/v1/cases/*/entries");
  await page.reload();
  await expect(kept(page)).toHaveText(BOTH);
  expect(await stored()).toContain("made to be refused");
});

test("an invented case stays off the server until somebody adds to it", async ({ page }) => {
  const posts: string[] = [];
  page.on("request", (request) => {
    if (request.method() === "POST") posts.push(request.url());
  });
  await page.goto("/");
  await page.locator("#demo-cases button").first().click();
  await expect(page.locator("#timeline li")).toHaveCount(2);
  await expect(kept(page)).toHaveText("Kept on this device.");
  expect(posts).toEqual([]);
  await addNote(page, "tried out");
  await expect(kept(page)).toHaveText(BOTH);
  expect(posts.length).toBe(1);
});

test("served as plain files the app says that it keeps everything here", async ({ page }) => {
  await page.route("**/api/**", (route) =>
    route.fulfill({ status: 404, contentType: "text/html", body: "<h1>Not found</h1>" }),
  );
  await page.goto("/");
  await expect(kept(page)).toContainText("Kept on this device only.");
  await expect(page.locator("#open-cases .case-line")).toHaveCount(0);
  await page.locator("#demo-cases button").first().click();
  await addNote(page, "kept here");
  await expect(kept(page)).toHaveText("Kept on this device.");
});

test("a case removed on the server is said to be so and stays until it is removed here", async ({ page }) => {
  const address = await openNamed(page, "invented coupe");
  const id = new URL(address).searchParams.get("id") ?? "";
  const { origin } = new URL(address);
  const removed = await page.request.delete(`/api/v1/cases/${id}`, { headers: { "if-match": "*", origin } });
  expect(removed.status()).toBe(204);
  await addNote(page, "entered afterwards");
  await expect(kept(page)).toContainText("was removed on the workshop's server");
  await page.reload();
  await expect(page.locator("#timeline")).toContainText("entered afterwards");
});

test("cases of the version without a server are queued for it and kept", async ({ page }) => {
  // A page of the same origin that does not open the database.
  await page.goto("/icon.svg");
  await page.evaluate(async () => {
    const head = { by: "invented apprentice", release: "1.1.0", knowledgeVersion: "1.1.0", car: {} };
    const case1 = { caseId: "old-case", customer: "Invented Customer", vehicle: "invented veteran" };
    const case2 = { caseId: "old-demo", customer: "", vehicle: "invented and untouched", invented: true };
    const entries = [
      { ...head, ...case1, id: "old-1", at: "2026-10-01T09:00:00.000Z", kind: "opened" },
      {
        caseId: "old-case",
        by: "a",
        id: "old-2",
        at: "2026-10-01T09:01:00.000Z",
        kind: "note",
        text: "old note",
      },
      { ...head, ...case2, id: "old-3", at: "2026-10-01T09:00:00.000Z", kind: "opened" },
    ];
    await new Promise<void>((resolve, reject) => {
      const opening = indexedDB.open("cornerwise", 1);
      opening.addEventListener("error", () => reject(new Error("The old database was not made.")));
      opening.addEventListener("upgradeneeded", () => {
        const db = opening.result;
        const store = db.createObjectStore("entries", { keyPath: "id" });
        store.createIndex("by-case", "caseId");
        db.createObjectStore("drafts", { keyPath: "key" });
        db.createObjectStore("settings", { keyPath: "key" });
        for (const entry of entries) store.add(entry);
      });
      opening.addEventListener("success", () => {
        opening.result.close();
        resolve();
      });
    });
  });
  await page.goto("/");
  await expect(page.locator("#open-cases .case-line")).toHaveCount(2);
  await page
    .locator("#open-cases")
    .getByRole("link", { name: /invented veteran/ })
    .click();
  await expect(page.locator("#timeline")).toContainText("old note");
  await expect(kept(page)).toHaveText(BOTH);
  const sent = await page.request.get("/api/v1/cases/old-case/entries");
  expect(((await sent.json()) as { version: number }).version).toBe(2);
  expect((await page.request.get("/api/v1/cases/old-demo")).status()).toBe(404);
});

test("a server that was set back to an older copy is sent everything again", async ({ page }) => {
  await openNamed(page, "invented limousine");
  await addNote(page, "acknowledged before");
  await expect(kept(page)).toHaveText(BOTH);
  await page.route("**/api/v1/me", async (route) => {
    const reply = await route.fetch();
    await route.fulfill({ response: reply, json: { ...(await reply.json()), history: "another database" } });
  });
  const sent: string[] = [];
  page.on("request", (request) => {
    if (request.method() === "POST") sent.push(request.postData() ?? "");
  });
  await page.reload();
  await expect.poll(() => sent.join("\n")).toContain("acknowledged before");
  expect(sent.join("\n")).toContain('"kind":"opened"');
  await expect(kept(page)).toHaveText(BOTH);
  // Once: the new database is known from then on.
  sent.length = 0;
  await page.reload();
  await expect(kept(page)).toHaveText(BOTH);
  expect(sent).toEqual([]);
});
