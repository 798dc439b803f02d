import { expect, test } from "@playwright/test";
import { servedKnowledge, servedKnowledgeText } from "./case-steps.ts";

// What must not be driven, and that a stop notice is above everything: our own rule, no published source.
test("a dangerous finding puts what to do on top and forbids a drive", async ({ page }) => {
  const knowledge = await servedKnowledge(page);
  // One that every car can have, so that nothing need be told of the car first.
  const everywhere = new Set(knowledge.parts.filter((p) => p.when === undefined).map((p) => p.id));
  const dangerous = knowledge.faults
    .filter((fault) => fault.stop !== undefined && fault.severity.word === "dangerous")
    .filter((fault) => fault.when === undefined && everywhere.has(fault.part))
    .flatMap((fault) => fault.decisive.map((decisive) => ({ fault, decisive })))
    .map(({ fault, decisive }) => ({
      fault,
      decisive,
      observation: knowledge.observations.find((o) => o.id === decisive.observation),
    }))
    .find(({ observation }) => observation?.places.includes("front-left"));
  const drive = knowledge.checks.find((check) => check.does.includes("drives"));
  if (dangerous?.observation === undefined || drive === undefined)
    throw new Error("The knowledge has no dangerous fault with a proof, or no drive.");
  const { fault, decisive, observation } = dangerous;

  await page.goto("/case/new");
  await page.getByRole("button", { name: "Open the case", exact: true }).click();
  await page.getByText("Search, or add more words").click();
  const search = page.getByLabel("Search findings and checks by any name");
  await search.fill(observation.name);
  await page.getByLabel(`Where: ${observation.name}`, { exact: true }).selectOption("front-left");
  const level = observation.levels[decisive.level] ?? "present";
  const word = level === "present" ? "yes" : level.replaceAll("-", " ");
  await page.getByRole("button", { name: `${observation.name}: ${word}`, exact: true }).click();

  const stop = page.getByRole("region", { name: "Stop notice" });
  await expect(stop).toContainText(fault.stop?.say ?? "");
  // Above everything but whose car it is.
  const [stopTop, complaintTop] = await Promise.all(
    [stop, page.locator("#complaint")].map(async (part) => (await part.boundingBox())?.y ?? 0),
  );
  expect(stopTop).toBeLessThan(complaintTop ?? 0);

  await search.fill(drive.name);
  await page
    .getByRole("button", { name: `Open the check: ${drive.name}` })
    .first()
    .click();
  await expect(page.locator("#next")).toContainText("must not be driven");
  await expect(page.locator("#next .steps")).toHaveCount(0);
});

test("no screen calls a car safe", async ({ page }) => {
  const knowledge = await servedKnowledgeText(page);
  // "Never call a car safe" in the rules of the project: the words of the knowledge reach every screen.
  expect(knowledge).not.toMatch(/\b(car|vehicle) is (now )?safe\b|\bsafe to drive\b|\broadworthy\b/i);
});
