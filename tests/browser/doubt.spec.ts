import { expect, type Page, test } from "@playwright/test";
import { groundCar, weigh } from "../../lib/engine/index.ts";
import { axeFindings, firstSuspect, openCase, rankingText, servedKnowledge, takeAll } from "./case-steps.ts";

/** Answers a finding at a place by its name. */
async function answer(page: Page, name: string, place: string, state: "yes" | "no"): Promise<void> {
  const fold = page.getByText("Search, or add more words");
  const search = page.getByLabel("Search findings and checks by any name");
  if (!(await search.isVisible())) await fold.click();
  await search.fill(name);
  await page.getByLabel(`Where: ${name}`, { exact: true }).selectOption(place);
  await page.getByRole("button", { name: `${name}: ${state}`, exact: true }).click();
  await expect(page.locator("#ranking")).toHaveAttribute("aria-busy", "false");
}

/*
 * No published source: our own rules. Doubt is said in words with its figure, nothing changes by itself, and the way to
 * change an answer is one tap away.
 */
test("says how steady the ranking is, and what would change it @both", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await expect(page.getByTestId("steady")).toHaveText(/^(Steady|Could be either of two|Open): .*\d+ %/);

  await page.getByText("What would change your mind").click();
  const change = page.locator("#ranking .found").first();
  await expect(change).toContainText(/ - then .+ leads \(/);
  await expect(change).toContainText("%");

  await firstSuspect(page).click();
  await expect(page.locator(".why .weight").first()).toContainText(/odds|hardly matters/);
  expect(await axeFindings(page)).toEqual([]);
});

test("an answer that does not fit is offered for a second look, and stays until it is changed", async ({
  page,
}) => {
  const knowledge = await servedKnowledge(page);
  const car = groundCar(knowledge, {});
  const chanceOf = (finding: string): number =>
    weigh(car, [{ finding, state: "present", by: "check" }]).logEvidence;
  // A finding that hardly any car has, of a fault that shows no noise: it fits no clunk.
  const odd = knowledge.faults
    .filter((f) => f.shows.length === 0 || f.shows.every((s) => s.complaint !== "noise"))
    .flatMap((f) => f.decisive.map((d) => knowledge.observations.find((o) => o.id === d.observation)))
    .filter((o) => o !== undefined && o.levels.length === 1 && o.when === undefined)
    .filter((o) => o?.places.includes("front-right") === true && (o.places.length ?? 0) > 1)
    .map((o) => ({ name: o?.name ?? "", chance: chanceOf(`${o?.id}@front-right`) }))
    .sort((a, b) => a.chance - b.chance)[0];
  if (odd === undefined)
    throw new Error("The knowledge has no finding that is rare and says nothing of a noise.");
  await openCase(page);
  await takeAll(page);
  await answer(page, odd.name, "front-right", "yes");
  const again = page.getByRole("region", { name: "Look at this again" });
  await expect(again).toContainText(odd.name, { ignoreCase: true });
  await expect(again).toContainText("%");
  const before = await rankingText(page);
  await again.getByRole("button").click();
  expect(await rankingText(page)).toBe(before);
  await answer(page, odd.name, "front-right", "no");
  await expect(again).toHaveCount(0);
});
