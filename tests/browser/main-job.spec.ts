import { expect, test } from "@playwright/test";
import { openCase, servedKnowledge, takeAll, WORDS } from "./case-steps.ts";

test("from typed complaint to printed job card @both", async ({ page }) => {
  await openCase(page);

  // Nothing counts before somebody takes it; each proposal shows words that stand in the text.
  await expect(page.getByText("Nothing was told yet.")).toBeVisible();
  const marked = await page.locator(".proposal mark").allInnerTexts();
  expect(marked.length).toBeGreaterThan(2);
  for (const piece of marked.flatMap((words) => words.split(" … "))) expect(WORDS).toContain(piece);

  await takeAll(page);
  const news = page.getByTestId("ranking-news");
  await expect(news).toContainText("New ranking. 1: ");

  // The proof of a suspect of the front left is looked up in the knowledge that is served, not written here.
  const knowledge = await servedKnowledge(page);
  const suspect = await page.locator("#ranking .suspect-name").first().innerText();
  const firstId = await page.locator("#ranking ol > li").first().getAttribute("id");
  const [faultId, place = ""] = (firstId ?? "").replace("suspect-", "").split("@");
  const fault = knowledge.faults.find((f) => f.id === faultId);
  const decisive = fault?.decisive[0];
  const check = knowledge.checks.find(
    (c) => c.settles.includes(decisive?.observation ?? "") && c.places.includes(place),
  );
  const observation = knowledge.observations.find((o) => o.id === decisive?.observation);
  if (check === undefined || observation === undefined || decisive === undefined)
    throw new Error(`The leading suspect ${firstId} has no check that proves it.`);

  await page.getByText("Search, or add more words").click();
  await page.getByLabel("Search findings and checks by any name").fill(check.name);
  const placeName = knowledge.places.places.find((p) => p.id === place)?.name ?? "";
  await page.getByRole("button", { name: `Open the check: ${check.name}, ${placeName}` }).click();
  await expect(page.locator("#open-check")).toContainText(check.name.slice(1));

  // Cautions stand before the steps.
  if (check.cautions.length > 0) {
    const order = await page
      .locator("#next")
      .evaluate((part) =>
        [...part.querySelectorAll(".cautions, .steps")].map((element) => element.className),
      );
    expect(order).toEqual(["cautions", "steps"]);
  }
  // What each result would do is said before one is given.
  await expect(page.locator(".preview").first()).toBeVisible();

  const level = observation.levels[decisive.level] ?? "present";
  const word =
    level === "present" ? "There" : level.charAt(0).toUpperCase() + level.slice(1).replaceAll("-", " ");
  const result = page
    .locator("#results fieldset")
    .filter({ has: page.getByRole("button", { name: word, exact: true }) })
    .filter({ hasText: new RegExp(escape(observation.name), "i") });
  await result.getByRole("button", { name: word, exact: true }).click();
  const save = page.getByRole("button", { name: /^Save \d/ });
  if (await save.isVisible()) await save.click();

  await expect(page.locator("#ranking .proven").first()).toBeVisible();
  // A screen reader is told the new order.
  await expect(news).toContainText(new RegExp(`1: ${escape(suspect)}`, "i"));
  await expect(page.locator("#verdict")).toContainText("this proves it");
  await page.getByLabel("Note (optional)").fill("Found on the ramp.");
  await page.getByRole("button", { name: "Give the verdict" }).and(page.locator("[type=submit]")).click();
  await page.getByRole("link", { name: "Open the job card" }).click();

  const card = page.getByRole("article");
  await expect(card).toContainText(WORDS);
  await expect(card).toContainText(fault?.name ?? "");
  await expect(card).toContainText("Found on the ramp.");
  for (const format of ["A4", "Letter"]) {
    const pdf = (await page.pdf({ format })).toString("latin1");
    const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    expect(pages, format).toBeGreaterThan(0);
    expect(pages, format).toBeLessThanOrEqual(2);
  }
});

test("an unproven verdict is allowed, with a plain warning", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await expect(page.locator("#verdict")).toContainText("Not proven:");
  await page.getByRole("button", { name: "Give the verdict" }).and(page.locator("[type=submit]")).click();
  await page.getByRole("link", { name: "Open the job card" }).click();
  await expect(page.getByRole("article")).toContainText("Not proven by hand:");
});

function escape(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
