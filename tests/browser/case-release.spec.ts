import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { exportCase } from "../../lib/case/export.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { groundCar, rankingRows, rowName, weighing } from "../../lib/engine/index.ts";
import { parseRelease } from "../../lib/knowledge/release.ts";
import { firstSuspect, rankingText, servedKnowledgeText } from "./case-steps.ts";
import { visitOnce } from "./offline-steps.ts";

const OLD = "0.1.0";
const FOLDER = join(import.meta.dirname, "../../knowledge/releases", OLD);
const OLD_TEXT = readFileSync(join(FOLDER, "compiled.json"), "utf8");
const [OLD_SUM = ""] = readFileSync(join(FOLDER, "SHA256SUMS"), "utf8").split(" ");

/** A complaint that the older release makes something else of than the newest one. */
function tellingComplaint(newest: string): string {
  const telling = parseRelease(OLD_TEXT).complaints.find(
    ({ id }) => leadersWith(OLD_TEXT, id).join() !== leadersWith(newest, id).join(),
  );
  if (telling === undefined) throw new Error(`${OLD} ranks every complaint as the newest release does.`);
  return telling.id;
}

/** A case that was opened with a release, as a copy that somebody saved; invented. */
function savedCase(id: string, release: string, knowledgeVersion: string, complaint: string): string {
  const head = { caseId: id, by: "a test" };
  const entries: Entry[] = [
    {
      ...head,
      id: `${id}-1`,
      at: "2026-03-01T09:30:00.000Z",
      kind: "opened",
      release,
      knowledgeVersion,
      car: {},
      customer: "invented",
      vehicle: "invented estate",
      invented: true,
    },
    {
      ...head,
      id: `${id}-2`,
      at: "2026-03-01T09:31:00.000Z",
      kind: "answered",
      finding: complaint,
      state: "present",
      how: "report",
    },
  ];
  return exportCase(entries);
}

async function takeIn(page: Page, text: string): Promise<void> {
  await page.locator('input[type="file"]').setInputFiles({
    name: "case.json",
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });
  await expect(page.getByText("2 entries taken in.")).toBeVisible();
}

/** The first names that a ranking with this knowledge must show, worked out beside the app. */
function leadersWith(text: string, finding: string): string[] {
  const knowledge = parseRelease(text);
  const ground = groundCar(knowledge, {}, []);
  const { weighed } = weighing(ground, [{ finding, state: "present", by: "report" }]);
  return rankingRows(ground, weighed)
    .slice(0, 6)
    .map((row) => `${rowName(knowledge, row)} ${Math.round(row.explains * 100)}`.toLowerCase());
}

async function leadersShown(page: Page): Promise<string[]> {
  await rankingText(page);
  const lines = await page.locator("#ranking ol > li").evaluateAll((items) =>
    items.slice(0, 6).map((item) => {
      const name = item.querySelector(".suspect-name")?.textContent ?? "";
      const share = /(\d+) %/.exec(item.querySelector(".chance .soft")?.textContent ?? "")?.[1] ?? "";
      return `${name} ${share}`;
    }),
  );
  return lines.map((line) => line.toLowerCase());
}

/** This device keeps the text of a release. */
async function expectKept(page: Page, sha256: string): Promise<void> {
  await expect
    .poll(() =>
      page.evaluate(
        (key) =>
          new Promise<boolean>((resolve, reject) => {
            const opening = indexedDB.open("cornerwise-knowledge");
            opening.onerror = () => reject(new Error("not opened"));
            opening.onsuccess = () => {
              const db = opening.result;
              if (!db.objectStoreNames.contains("releases")) {
                db.close();
                resolve(false);
                return;
              }
              const got = db.transaction("releases").objectStore("releases").getKey(key);
              got.onsuccess = () => {
                db.close();
                resolve(got.result !== undefined);
              };
            };
          }),
        sha256,
      ),
    )
    .toBe(true);
}

test.describe("without a network", () => {
  test.use({ serviceWorkers: "allow" });

  test("a case that was opened with an older release is weighed with that one until somebody changes it", async ({
    page,
    context,
  }) => {
    await visitOnce(page);
    const complaint = tellingComplaint(await servedKnowledgeText(page));
    await takeIn(page, savedCase("older", OLD_SUM, OLD, complaint));
    // It was never opened here: the list of cases sees to it that its release is.
    await expectKept(page, OLD_SUM);
    await context.setOffline(true);
    await page.goto("/case?id=older");
    await expect(page.getByText(`This case stays with knowledge ${OLD}`)).toBeVisible();
    await expect(firstSuspect(page)).toBeVisible();
    const before = leadersWith(OLD_TEXT, complaint);
    const newest = await page.evaluate(async () => {
      const [first] = (await (await fetch("/knowledge/index.json")).json()) as {
        sha256: string;
        version: string;
      }[];
      const text = await (await fetch(`/knowledge/${first?.sha256}.json`)).text();
      return { text, version: first?.version ?? "" };
    });
    const after = leadersWith(newest.text, complaint);
    expect(await leadersShown(page)).toEqual(before);

    await page.getByRole("button", { name: `Go on with ${newest.version}` }).click();
    await expect(page.getByText(`This case stays with knowledge ${OLD}`)).toBeHidden();
    await expect.poll(() => leadersShown(page)).toEqual(after);
    await expect(page.locator("#timeline")).toContainText(`Weighed with release ${newest.version}`);
  });
});

test("a release that the server withdrew is still there for the case that this device opened with it", async ({
  page,
}) => {
  await page.goto("/");
  const complaint = tellingComplaint(await servedKnowledgeText(page));
  await takeIn(page, savedCase("withdrawn", OLD_SUM, OLD, complaint));
  await page.goto("/case?id=withdrawn");
  await expect(firstSuspect(page)).toBeVisible();
  await expectKept(page, OLD_SUM);
  await page.route(`**/knowledge/${OLD_SUM}.json`, (route) => route.fulfill({ status: 404 }));
  await page.route("**/knowledge/index.json", async (route) => {
    const response = await route.fetch();
    const index = (await response.json()) as { sha256: string }[];
    await route.fulfill({ response, json: index.filter(({ sha256 }) => sha256 !== OLD_SUM) });
  });
  await page.reload();
  await expect(page.getByText(`This case stays with knowledge ${OLD}`)).toBeVisible();
  expect(await leadersShown(page)).toEqual(leadersWith(OLD_TEXT, complaint));
});

test("a release that nobody has is said to be missing, and nothing else is taken unasked", async ({
  page,
}) => {
  await page.goto("/");
  const newest = await servedKnowledgeText(page);
  const complaint = tellingComplaint(newest);
  await takeIn(page, savedCase("nobodys", "0".repeat(64), "9.9.9", complaint));
  await page.goto("/case?id=nobodys");
  await expect(page.getByRole("heading", { name: "Knowledge 9.9.9 is not here" })).toBeVisible();
  await expect(page.getByText("Neither this device nor the server has it.")).toBeVisible();
  await expect(page.locator("#ranking")).toBeHidden();
  await page.getByRole("button", { name: /^Go on with / }).click();
  await expect(firstSuspect(page)).toBeVisible();
  expect(await leadersShown(page)).toEqual(leadersWith(newest, complaint));
});

test("a release that arrives damaged is not used", async ({ page }) => {
  await page.goto("/");
  await page.route(`**/knowledge/${OLD_SUM}.json`, (route) =>
    route.fulfill({ body: OLD_TEXT.replace("joint", "jiont"), contentType: "application/json" }),
  );
  await takeIn(page, savedCase("damaged", OLD_SUM, OLD, "noise"));
  await page.goto("/case?id=damaged");
  await expect(page.getByRole("heading", { name: `Knowledge ${OLD} is not here` })).toBeVisible();
  await expect(page.getByText("arrived damaged")).toBeVisible();
});
