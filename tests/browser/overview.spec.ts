import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { appendEntries, openStore } from "../../lib/store/index.ts";
import type { CasesTable } from "../../lib/store/tables.ts";
import { made, opening } from "../support/made-entries.ts";
import { seedCases } from "../support/seed-overview.ts";
import { type OwnServer, ownServer } from "./own-server.ts";

const COUNT = 2400;
let folder = "";
let server: OwnServer;
let cases: readonly CasesTable[] = [];

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "cornerwise-overview-"));
  const database = join(folder, "cornerwise.db");
  const store = await openStore({ database });
  cases = await seedCases(store, COUNT, Date.now(), "1.2.0");
  await store.close();
  server = await ownServer({ CORNERWISE_DATABASE: database });
});

test.afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

const lines = (page: Page) => page.locator("#open-cases .case-line");
const names = (page: Page) => page.locator("#open-cases .case-line strong").allInnerTexts();

/** The seeded cases in the order of the overview, worked out here. */
function expected(wanted: (row: CasesTable) => boolean): string[] {
  return cases
    .filter((row) => row.closed === 0 && wanted(row))
    .toSorted((a, b) => a.urgency - b.urgency || (a.opened_at < b.opened_at ? -1 : 1))
    .map(({ vehicle }) => vehicle);
}

test("thousands of cases: the most urgent first, picked by the address, back and forth @both", async ({
  page,
}) => {
  await page.goto(`${server.url}/`);
  await expect(lines(page)).toHaveCount(50);
  expect(await names(page)).toEqual(expected(() => true).slice(0, 50));
  await expect(page.getByRole("region", { name: "Do not drive it" })).toBeVisible();

  await page.getByText("Pick and order:").click();
  await page.getByLabel("Leave it standing for now").check();
  await page.getByLabel("Who has it").selectOption("nobody");
  await expect(page).toHaveURL(/urgency=hold/);
  await expect(page).toHaveURL(/who=nobody/);
  const narrowed = expected((row) => row.level === "hold" && row.assigned_name === null);
  await expect.poll(() => names(page)).toEqual(narrowed.slice(0, 50));
  await page.getByRole("button", { name: "Show more" }).click();
  await expect.poll(() => names(page)).toEqual(narrowed.slice(0, 100));

  // Opened, and back: the list stands as it was left.
  await lines(page).first().getByRole("link").click();
  await expect(page.getByRole("heading", { level: 1, name: narrowed[0] ?? "" })).toBeVisible();
  await page.goBack();
  await expect.poll(() => names(page)).toEqual(narrowed.slice(0, 100));
  await page.goBack();
  await expect(page).not.toHaveURL(/who=/);
  await expect.poll(() => names(page)).toEqual(expected((row) => row.level === "hold").slice(0, 50));

  // Somebody else opens the address that they were sent.
  await page.goto(`${server.url}/?who=name:Edda&urgency=recover,best&sort=urgent`);
  await expect(page.getByText("urgency=best. It is left out of account.")).toBeVisible();
  await expect
    .poll(() => names(page))
    .toEqual(expected((row) => row.level === "recover" && row.assigned_name === "Edda").slice(0, 50));

  await page.goto(`${server.url}/`);
  await page.getByLabel("Search vehicle, plate or customer").fill(cases[77]?.plate ?? "");
  const found = cases[77]?.closed === 0 ? [cases[77].vehicle] : [];
  await expect.poll(() => names(page)).toEqual(found);
});

test("a case is taken, and an answer given elsewhere moves it up by itself", async ({ page }) => {
  const store = await openStore({ database: server.database });
  const now = new Date().toISOString();
  const send = (entries: Parameters<typeof appendEntries>[1]["entries"]) =>
    appendEntries(store, { caseId: "by-night", entries, accountId: null, ownerId: null, now });
  const car = { drive: "front", front: { layout: "strut" }, odometerKm: 190_000, ageYears: 14 };
  await send([
    { ...opening("by-night", { release: "1.2.0", vehicle: "invented night case", car }), at: now },
  ]);
  await page.goto(`${server.url}/?text=night+case`);
  const own = (title: string) =>
    page.getByRole("region", { name: title }).getByRole("link", { name: /invented night case/ });
  await expect(own("Nothing ticked yet")).toBeVisible({ timeout: 20_000 });

  // As a customer's form would add it, with no screen of the workshop open on the case.
  await send([
    made("by-night", "night-1", now, {
      kind: "answered",
      finding: "lower-ball-joint-play@front-left",
      state: "present",
      level: "gross",
      how: "check",
    }),
  ]);
  await expect
    .poll(
      async () => {
        await page.reload();
        await expect(lines(page)).toHaveCount(1);
        return page.getByRole("region", { name: "Do not drive it" }).count();
      },
      { timeout: 20_000 },
    )
    .toBe(1);

  await own("Do not drive it").click();
  await page.getByRole("button", { name: "Change" }).first().click();
  await page.getByLabel("Give it to").fill("Ana Invented");
  await page.getByRole("button", { name: "Give it", exact: true }).click();
  await expect(page.getByText("Who has it: Ana Invented")).toBeVisible();
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
  await page.goto(`${server.url}/?who=name:Ana+Invented`);
  await expect(lines(page)).toHaveCount(1);
  await expect(lines(page)).toContainText("Ana Invented has it");

  // Cut off, the cases of this device stand alone, as urgent as before.
  await page.route("**/api/**", (route) => route.abort());
  await page.goto(`${server.url}/`);
  await expect(page.getByText("These are the cases that are kept on this device")).toBeVisible();
  await expect(own("Do not drive it")).toBeVisible();
  await expect(lines(page)).toHaveCount(1);
  await store.close();
});
