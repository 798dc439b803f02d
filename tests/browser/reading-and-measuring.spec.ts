import { expect, test } from "@playwright/test";
import { openCase, servedKnowledge, takeAll } from "./case-steps.ts";

test("what is not meant is left out and does not come back", async ({ page }) => {
  await openCase(page);
  const proposals = page.locator(".proposal");
  await expect(proposals.first()).toBeVisible();
  const before = await proposals.count();
  const name = await proposals.last().locator("strong").innerText();
  await proposals
    .last()
    .getByRole("button", { name: /^Not meant/ })
    .click();
  await expect(proposals).toHaveCount(before - 1);
  await page.reload();
  await expect(proposals).toHaveCount(before - 1);
  await page.getByRole("button", { name: /^Take all/ }).click();
  await expect(page.locator(".so-far")).not.toContainText(name.split(": ").at(-1) ?? name);
});

test("words that go by the side of traffic ask for it, and are read with it in the next case too", async ({
  page,
}) => {
  const words = "There is a knock from the nearside front when I drive over bumps.";
  await openCase(page, words);
  const proposals = page.locator("#proposals");
  const side = page.getByLabel("Traffic here drives");
  await expect(side).toHaveValue("");
  await expect(proposals.getByText(/from the (left|right)/)).toHaveCount(0);
  // The nearside is the one by the kerb (usage of the trade, from memory).
  await side.selectOption("left");
  await expect(proposals.getByText(/from the left/)).toBeVisible();
  await openCase(page, words);
  await expect(proposals.getByText(/from the left/)).toBeVisible();
  await page.getByLabel("Traffic here drives").selectOption("right");
  await expect(proposals.getByText(/from the right/)).toBeVisible();
});

test("a complaint can be told by ticking alone", async ({ page }) => {
  await page.goto("/case/new");
  await page.getByRole("button", { name: "Open the case", exact: true }).click();
  await expect(page.getByText("Nothing was told yet.")).toBeVisible();
  const knowledge = await servedKnowledge(page);
  const complaint = knowledge.complaints.find((c) =>
    knowledge.features.some((f) => f.complaints[0] === c.id),
  );
  if (complaint === undefined) throw new Error("The knowledge has no complaint with features.");
  const group = page.getByRole("group", { name: new RegExp(`^${complaint.name}$`, "i") });
  await group.getByRole("button", { name: /Yes$/ }).click();
  await expect(page.locator("#ranking ol > li").first()).toBeVisible();
  await expect(group.getByRole("button", { name: /Yes$/ })).toHaveAttribute("aria-pressed", "true");
  // Pressed again it is not known any more.
  await group.getByRole("button", { name: /Yes$/ }).click();
  await expect(page.getByText("Nothing was told yet.")).toBeVisible();
});

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
const MM_PER_INCH = 25.4;

test("a length in inches is mapped to the grade that its millimetres have", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const knowledge = await servedKnowledge(page);
  // Any observation that is measured in mm and graded, with a check that a technician can open by name.
  const measured = knowledge.observations
    .map((observation) => ({
      observation,
      check: knowledge.checks.find((c) => c.settles.includes(observation.id) && c.when === undefined),
    }))
    .find(({ observation, check }) => observation.measure?.unit === "mm" && check !== undefined);
  const { observation, check } = measured ?? {};
  const limits = observation?.measure?.atLeast ?? [];
  if (observation === undefined || check === undefined || limits.length < 2)
    throw new Error("The knowledge has no graded observation in mm.");

  await page.locator("#next summary").first().click();
  await page.getByLabel("Small lengths in").selectOption("inch");
  await page.getByText("Search, or add more words").click();
  await page.getByLabel("Search findings and checks by any name").fill(check.name);
  await page
    .getByRole("button", { name: `Open the check: ${check.name}` })
    .first()
    .click();
  const result = page
    .locator("#results fieldset")
    .filter({ hasText: observation.measure?.quantity ?? "" })
    .first();
  const words = (level: string | undefined) => (level ?? "").replaceAll("-", " ");
  for (const [index, limit] of limits.entries()) {
    // Just below a limit is the grade before it, just above it the limit's own.
    const below = index === 0 ? "not there" : words(observation.levels[index - 1]);
    for (const [value, grade] of [
      [limit * 0.98, below],
      [limit * 1.02, words(observation.levels[index])],
    ] as const) {
      await result.getByRole("textbox").fill((value / MM_PER_INCH).toFixed(5));
      await result.getByRole("button", { name: "Use" }).click();
      await expect(result.getByRole("status")).toContainText(new RegExp(`- ${grade}\\.$`, "i"));
    }
  }
  await result.getByRole("textbox").fill("a lot");
  await result.getByRole("button", { name: "Use" }).click();
  await expect(result.getByRole("status")).toContainText("Give a number");
});

test("miles typed are kept as km", async ({ page }) => {
  await page.goto("/case/new");
  const field = page.getByLabel(/How far has it run/);
  await expect(field).toBeVisible();
  await page.getByLabel("Distances in").selectOption("miles");
  await field.fill("1000");
  await page.getByRole("button", { name: "Open the case", exact: true }).click();
  await page.locator("summary", { hasText: /^The car/ }).click();
  await expect(page.getByLabel(/How far has it run/)).toHaveValue("1000");
  await page.getByLabel("Distances in").selectOption("km");
  // 1000 miles of 1.609344 km.
  await expect(page.getByLabel(/How far has it run/)).toHaveValue("1609");
});

test("a number that cannot be is named beside its field", async ({ page }) => {
  await page.goto("/case/new");
  await page.getByLabel(/How far has it run/).fill("plenty");
  await expect(page.getByText("Give a number, or leave it empty")).toBeVisible();
  await expect(page.getByRole("button", { name: "Open the case", exact: true })).toBeDisabled();
});
