import { readFileSync } from "node:fs";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import Papa from "papaparse";
import { madeExercise } from "../support/made-exercise.ts";
import { look } from "./look.ts";
import { ownServer, type OwnServer } from "./own-server.ts";
import { device, makeAccount, setUp, signIn, TRAINEE } from "./people-steps.ts";

let server: OwnServer;

test.beforeAll(async () => {
  server = await ownServer();
});

test.afterAll(async () => {
  await server.stop();
});

/** Asks the server as a page of ours would. */
async function ask<T>(request: APIRequestContext, path: string, data: unknown, key?: string): Promise<T> {
  const headers = { origin: server.url, ...(key !== undefined && { authorization: `Bearer ${key}` }) };
  const response = await request.post(`/api/v1${path}`, { data, headers });
  expect(response.ok(), `${path} ${response.status()}`).toBe(true);
  return (await response.json()) as T;
}

/** The table that a tap gives. */
async function savedTable(page: Page, name: string): Promise<Record<string, string>[]> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name }).click(),
  ]);
  const text = readFileSync(await download.path(), "utf8");
  return Papa.parse<Record<string, string>>(text.trim(), { header: true }).data;
}

test("whoever teaches sees how a class did, narrows it and takes it along; a trainee is told that it is not theirs", async ({
  browser,
}) => {
  test.setTimeout(90_000);
  const page = await (await device(browser, server)).newPage();
  await setUp(page);
  await page.goto("/people");
  await makeAccount(page, TRAINEE);

  const { request } = page;
  const { id } = await ask<{ id: string }>(request, "/exercises", madeExercise());
  const handedOut = await ask<{ token: string }>(request, `/exercises/${id}/hand-outs`, {
    expiresAt: new Date(Date.now() + 86_400_000).toISOString(),
    course: "Autumn (invented)",
  });
  const key = "k".repeat(32);
  const outside = (await device(browser, server)).request;
  for (const [attempt, name, confidence] of [
    ["attempt-one", "Tilda", 0.9],
    ["attempt-two", "=SUM(1)", 0.5],
  ] as const) {
    await ask(outside, "/attempts", { id: attempt, name, token: handedOut.token, key });
    const made = { id: "c1", check: "shake-anti-roll-bar@front-left", cautionsRead: false };
    await ask(outside, `/attempts/${attempt}/checks`, made, key);
    const suspects = ["anti-roll-bar-link-worn@front-left"];
    await ask(outside, `/attempts/${attempt}/verdict`, { id: "v", suspects, confidence }, key);
  }

  await page.goto("/teach/board");
  const tallies = page.locator("#tallies");
  // Brier 1950: (0.9 - 1)^2 and (0.5 - 1)^2.
  await expect(tallies.getByRole("row", { name: /Tilda/ })).toContainText("0.01");
  await expect(tallies.getByRole("row", { name: /=SUM/ })).toContainText("0.25");
  await expect(page.locator("#attempts .case-line")).toHaveCount(2);
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 844 });
    await look(page, `the board at ${width}`);
  }

  await tallies.getByRole("button", { name: "Tilda" }).click();
  await expect(page).toHaveURL(/[?&]trainee=Tilda/);
  await expect(page.locator("#attempts .case-line")).toHaveCount(1);
  await page.reload();
  await expect(page.locator("#attempts .case-line")).toHaveCount(1);
  await expect(page.getByText("Pick attempts: Tilda")).toBeVisible();
  expect(await savedTable(page, "Attempts as a table")).toMatchObject([
    {
      trainee: "Tilda",
      right: "yes",
      "Brier score": "0.01",
      "cautions not read": "shake-anti-roll-bar@front-left",
    },
  ]);
  expect(await savedTable(page, "Steps as a table")).toMatchObject([
    { step: "1", check: "shake-anti-roll-bar@front-left", "cautions not read": "yes" },
  ]);
  await page.locator("#attempts .case-link").click();
  await expect(page).toHaveURL(/\/exercise\/debrief\?id=attempt-one/);
  await expect(page.getByRole("heading", { level: 2, name: "What was wrong" })).toBeVisible();

  const trainee = await (await device(browser, server)).newPage();
  await signIn(trainee, TRAINEE);
  await trainee.goto("/teach/board");
  await expect(trainee.getByText("Only instructors and the owner see how a class did.")).toBeVisible();
  await expect(trainee.getByText("Tilda")).toHaveCount(0);
});
