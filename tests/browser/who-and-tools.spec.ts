import { expect, type Page, test } from "@playwright/test";
import type { CompiledCheck } from "../../lib/knowledge/schema/compiled.ts";
import { axeFindings, openCase, servedKnowledge, takeAll } from "./case-steps.ts";

/** Opens a check by its name, from the search. */
async function openCheck(page: Page, check: CompiledCheck): Promise<void> {
  const box = page.getByLabel("Search findings and checks by any name");
  if (!(await box.isVisible())) await page.getByText("Search, or add more words").click();
  await box.fill(check.name);
  await page
    .getByRole("button", { name: `Open the check: ${check.name}` })
    .first()
    .click();
  await expect(page.locator("#open-check")).toContainText(check.name, { ignoreCase: true });
}

/** Names of the checks that are proposed, without their places. */
async function proposedChecks(page: Page): Promise<string[]> {
  await expect(page.locator("#next [role=status]", { hasText: "Choosing" })).toHaveCount(0);
  const others = page.locator("#next summary", { hasText: "Other good checks" });
  if (
    (await others.count()) > 0 &&
    !(await page.locator("#next details[open] > summary", { hasText: "Other good checks" }).isVisible())
  )
    await others.click();
  const lines = page.locator("#next details .line-button > span:first-child");
  return [await page.locator("#open-check").innerText(), ...(await lines.allInnerTexts())];
}

test("a tool that is not here is noted once and leaves out every check that needs it", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const knowledge = await servedKnowledge(page);
  const plain = knowledge.checks.find(
    (c) => c.tools.length === 1 && c.when === undefined && !c.helper && !c.does.includes("drives"),
  );
  if (plain === undefined) throw new Error("The knowledge has no check with one tool.");
  const [tool = ""] = plain.tools;
  await openCheck(page, plain);
  await page.getByText("Cannot be done", { exact: true }).click();
  await page.getByRole("button", { name: `Not here: ${tool}`, exact: true }).click();
  const needing = knowledge.checks.filter((c) => c.tools.includes(tool)).map((c) => c.name.toLowerCase());
  const names = (await proposedChecks(page)).map((n) => n.toLowerCase());
  expect(names.filter((n) => needing.some((own) => n.startsWith(own)))).toEqual([]);
  // Opened by name all the same, its card says what is not here.
  await openCheck(page, plain);
  await expect(page.locator("#next .notice", { hasText: "Takes what is not here" })).toContainText(tool);
  // Kept on the device, and taken back where who does the checks is said.
  await page.reload();
  const who = page.locator("#next summary").filter({ hasText: `without ${tool}` });
  await who.click();
  await page.getByRole("button", { name: `It is here again: ${tool}` }).click();
  await expect(page.locator("#next summary").filter({ hasText: `without ${tool}` })).toHaveCount(0);
});

test("who does the checks decides which are proposed @both", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const knowledge = await servedKnowledge(page);
  const byName = new Map(knowledge.checks.map((c) => [c.name.toLowerCase(), c]));
  const needsOf = (c: CompiledCheck) => knowledge.setUps.setUps.find((s) => s.id === c.setUp)?.needs;
  const proposed = async () =>
    (await proposedChecks(page)).flatMap((line) => {
      const name = line.toLowerCase();
      return [...byName].filter(([own]) => name === own || name.startsWith(`${own},`)).map(([, c]) => c);
    });
  await page.locator("#next summary").first().click();
  const asker = page.getByLabel("Who does the checks?");

  await asker.selectOption("technician");
  await page.getByLabel("A helper is at hand").uncheck();
  await expect(page.locator("#next")).toContainText("without a lift, alone", { ignoreCase: true });
  await expect
    .poll(async () => (await proposed()).filter((c) => needsOf(c) === "lift" || c.helper))
    .toEqual([]);
  expect((await proposed()).length).toBeGreaterThan(0);

  await asker.selectOption("driver");
  await expect
    .poll(async () => (await proposed()).filter((c) => c.who === "technician" || needsOf(c) === "stands"))
    .toEqual([]);

  await asker.selectOption("owner");
  await expect.poll(async () => (await proposed()).filter((c) => c.who !== "owner")).toEqual([]);
  // What the owner tells over the phone is told, not checked.
  await page.locator("#results button").first().click();
  await expect(page.locator("#timeline li").first()).toContainText(" - told");
});

test("a check that is seized is put aside with one tap, and undo brings it back", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await page.locator("#next .batch .line-button").first().click();
  const title = await page.locator("#open-check").innerText();
  await page.getByText("Cannot be done", { exact: true }).click();
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole("button", { name: "Seized or rusted solid" }).click();
  await expect(page.locator("#timeline li").first()).toContainText("Seized or rusted solid");
  await expect(page.locator("#open-check")).not.toHaveText(title);
  await page.locator("#next summary", { hasText: "Put aside (1)" }).click();
  await page.getByRole("button", { name: /^Undo the last entry/ }).click();
  await expect(page.locator("#next summary", { hasText: "Put aside" })).toHaveCount(0);
});
