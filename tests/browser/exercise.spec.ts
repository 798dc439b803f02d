import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { madeExercise, SEED } from "../support/made-exercise.ts";
import { look } from "./look.ts";
import { ownServer, type OwnServer } from "./own-server.ts";
import { device, setUp } from "./people-steps.ts";

let server: OwnServer;

test.beforeAll(async () => {
  server = await ownServer();
});

test.afterAll(async () => {
  await server.stop();
});

const INSTRUCTOR = {
  name: "Ina",
  role: "instructor",
  email: "ina@harbour-lane.example",
  password: "Ina drinks cold tea",
};

/** Asks the server as a page of ours would. */
async function ask<T>(request: APIRequestContext, path: string, data?: unknown): Promise<T> {
  const headers = { origin: server.url };
  const response = data === undefined ? await request.get(path) : await request.post(path, { data, headers });
  expect(response.ok(), `${path} ${response.status()}`).toBe(true);
  return (await response.json()) as T;
}

interface Heard {
  readonly url: string;
  readonly text: string;
}

/** Everything that the server sends to a page: bodies with their headers, and what comes by other ways. */
function listen(page: Page): { readonly all: () => Promise<Heard[]>; readonly sockets: string[] } {
  const bodies: Promise<Heard>[] = [];
  const sockets: string[] = [];
  page.on("response", (response) => {
    bodies.push(
      (async () => {
        const headers = JSON.stringify(await response.allHeaders().catch(() => ({})));
        const text = await response.text().catch(() => "");
        return { url: response.url(), text: `${headers}\n${text}` };
      })(),
    );
  });
  page.on("websocket", (socket) => sockets.push(socket.url()));
  return { all: () => Promise.all(bodies), sockets };
}

test("a trainee works an exercise to its verdict without being sent what is hidden; the attempt is on the board", async ({
  browser,
}) => {
  test.setTimeout(120_000);
  const desk = await device(browser, server);
  const owner = await desk.newPage();
  await setUp(owner);
  await ask(owner.request, "/api/v1/accounts", INSTRUCTOR);
  const { request } = await device(browser, server);
  await ask(request, "/api/v1/session", { email: INSTRUCTOR.email, password: INSTRUCTOR.password });
  const hidden = madeExercise();
  const { id } = await ask<{ id: string }>(request, "/api/v1/exercises", hidden);
  const expiresAt = new Date(Date.now() + 86_400_000).toISOString();
  const handedOut = await ask<{ code: string; token: string }>(request, `/api/v1/exercises/${id}/hand-outs`, {
    expiresAt,
  });

  const phone = await device(browser, server);
  const page = await phone.newPage();
  const heard = listen(page);
  await page.goto(`/exercise#${handedOut.token}`);
  await page.getByLabel("Your name").fill("Tilda");
  await page.getByRole("button", { name: "Begin the exercise" }).click();
  await expect(page.getByRole("heading", { level: 1, name: hidden.name })).toBeVisible();
  await expect(page.locator("#open-check")).toBeVisible();
  await look(page, "exercise-work");

  for (let made = 1; made <= 3; made++) {
    const cautions = page.getByLabel("I have read this and would do it");
    if (await cautions.isVisible()) await cautions.check();
    await page.locator("#make-check").click();
    await expect(page.locator("#timeline .timeline > li")).toHaveCount(made);
  }
  await expect(page.locator("#next")).toContainText("Last check, and what it found");

  // What was done is on the server: a fresh load shows it, and so does the list.
  await page.reload();
  await expect(page.locator("#timeline .timeline > li")).toHaveCount(3);
  const verdict = page.locator("#verdict");
  await verdict
    .getByLabel("Look for a fault by part, place or what is wrong")
    .fill("front left anti-roll bar link worn");
  await verdict.getByRole("button", { name: "Name it" }).first().click();
  await verdict.getByRole("button", { name: "80 %" }).click();

  // Every answer of the server so far: the page, its scripts, the knowledge, the attempt.
  const before = await heard.all();
  expect(before.filter(({ url }) => url.includes("/api/v1/attempts")).length).toBeGreaterThan(4);
  for (const { url, text } of before) expect(text.includes(String(SEED)), url).toBe(false);
  // The knowledge names every fault there is, so what is hidden is looked for where the attempt's data come.
  for (const { url, text } of before.filter((one) => one.url.includes("/api/"))) {
    const answer = text.replaceAll(/"finding":"[^"]*"/g, "");
    expect(/hidden|"seed"|"results"|anti-roll-bar-link-worn|worn-link/.test(answer), url).toBe(false);
  }
  expect(heard.sockets).toEqual([]);

  await verdict.getByRole("button", { name: "Give the verdict" }).click();
  await expect(page.getByRole("heading", { level: 2, name: "What was wrong" })).toBeVisible();
  await expect(page.locator("#answer")).toContainText(/anti-roll bar link/i);
  // Brier 1950: (0.8 - 1)^2 = 0.04.
  await expect(page.locator("#score")).toContainText("Brier score 0.04");
  await expect(page.locator(".debrief-steps > li")).toHaveCount(3);
  await look(page, "exercise-debrief");

  await page.goto("/exercise");
  await expect(page.locator("#mine")).toContainText(/Right.*see how it went/);
  await look(page, "exercise-begin");

  const board = await ask<{ attempts: { trainee: { name: string }; score: { right: boolean } }[] }>(
    request,
    `/api/v1/attempts?exercise=${id}`,
  );
  expect(board.attempts).toMatchObject([{ trainee: { name: "Tilda" }, checks: 3, score: { right: true } }]);
});
