import { expect, type Page, test } from "@playwright/test";
import { axeFindings, openCase, servedKnowledge, takeAll } from "./case-steps.ts";

/** Width by which the page is wider than the screen. */
function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** A case of a car that has run so far; the address of one of its own screens. */
async function caseOfCar(page: Page, km: number): Promise<string> {
  await page.goto("/case/new");
  await page.getByLabel(/How far has it run/).fill(String(km));
  await page.getByLabel("Vehicle").fill("invented saloon");
  await page.getByRole("button", { name: "Open the case", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "invented saloon" })).toBeVisible();
  return new URL(page.url()).searchParams.get("id") ?? "";
}

const percentOf = (words: string): number => Number(words.replace(/[^\d.]/g, "")) / 100;

test("wear ahead of a part that was renewed is its conditional Weibull failure", async ({ page }) => {
  await caseOfCar(page, 150_000);
  const knowledge = await servedKnowledge(page);
  // A wear life in km that nothing modifies, of a part that every car has.
  const [fault, part] =
    knowledge.faults
      .filter((f) => "km" in f.life && f.modifiers.length === 0)
      .map((f) => [f, knowledge.parts.find((p) => p.id === f.part)] as const)
      .find(([, p]) => p !== undefined && p.when === undefined) ?? [];
  if (fault === undefined || part === undefined || !("km" in fault.life))
    throw new Error("The knowledge has no plain wear life.");
  await page.getByRole("link", { name: "Wear ahead" }).click();
  await expect(page.locator("#wear tbody tr").first()).toBeVisible();

  const fittedAt = 60_000;
  await page.getByLabel("Part", { exact: true }).selectOption(part.id);
  await page.getByLabel(/^Fitted at/).fill(String(fittedAt));
  await page.getByRole("button", { name: "Put it in the car's history" }).click();
  await expect(page.locator("#history li")).toContainText("fitted at 60,000 km");
  await page.getByLabel("Only parts named").fill(`${part.name}: ${fault.name}`);
  const row = page.locator("#wear tbody tr");
  await expect(row).toHaveCount(1);
  const { km: characteristic, shape } = fault.life;
  // 1 - R(t + x) / R(t): NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
  const failing = (x: number) => {
    const t = 150_000 - fittedAt;
    return 1 - Math.exp((t / characteristic) ** shape - ((t + x) / characteristic) ** shape);
  };
  const [, ten = "", twenty = ""] = await row.locator("td").allInnerTexts();
  for (const [shown, chance] of [
    [ten, failing(10_000)],
    [twenty, failing(20_000)],
  ] as const) {
    // One decimal below 10 %, whole per cents above.
    expect(Math.abs(percentOf(shown) - chance)).toBeLessThanOrEqual(chance < 0.0995 ? 0.00051 : 0.0051);
  }
  await row.getByRole("button").first().click();
  await expect(page.locator("#wear")).toContainText(`shape ${shape}`);
  await expect(page.getByRole("img", { name: /^Chance of failing: .* within 10,000 km/ })).toBeVisible();

  // Taken back, it counts as old as the car again; the case's own list has the entry and its undo.
  await page.getByRole("button", { name: /^Take back/ }).click();
  await expect(page.locator("#history li")).toHaveCount(0);
  await page.getByRole("link", { name: "Back to the case" }).click();
  await expect(page.locator("#timeline")).toContainText("at 60000 km");
  await expect(page.locator("#timeline")).toContainText("taken back");
});

test("wear can be sorted by how far one looks ahead, and is printed @both", async ({ page }) => {
  const id = await caseOfCar(page, 120_000);
  await page.goto(`/case/wear?id=${id}`);
  const column = (k: number) => page.locator(`#wear tbody tr td:nth-of-type(${k})`);
  await expect(column(1).first()).toBeVisible();
  for (const [k, horizon] of ["0", "10000", "20000"].entries()) {
    await page.getByLabel("Sort by").selectOption(horizon);
    const shown = (await column(k + 1).allInnerTexts()).map(percentOf);
    expect(shown.length).toBeGreaterThan(10);
    expect(shown).toEqual(shown.toSorted((a, b) => b - a));
  }
  expect(await overhang(page)).toBe(0);
  await page.emulateMedia({ media: "print" });
  await expect(page.locator("#wear table")).toBeVisible();
  await expect(page.getByRole("button", { name: "Print" })).toBeHidden();
});

test("a part older than the car is refused, with what was typed kept", async ({ page }) => {
  const id = await caseOfCar(page, 50_000);
  await page.goto(`/case/wear?id=${id}`);
  const part = page.getByLabel("Part", { exact: true });
  await expect(part.locator("option").nth(5)).toBeAttached();
  await part.selectOption({ index: 3 });
  await page.getByLabel(/^Fitted at/).fill("90000");
  await expect(page.getByText("The part would be older than the car.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Put it in the car's history" })).toBeDisabled();
  await page.reload();
  await expect(page.getByLabel(/^Fitted at/)).toHaveValue("90000");
  await page.getByLabel(/^Fitted at/).fill("soon");
  await expect(page.getByText('"soon" is no reading of the clock')).toBeVisible();
});

test("a part renewed lately moves the ranking, and taken back it does not", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  const first = page.locator("#ranking ol > li").first();
  const before = await first.innerText();
  const knowledge = await servedKnowledge(page);
  const named = before.toLowerCase();
  const part = knowledge.parts
    .filter((p) => named.includes(p.name.toLowerCase()))
    .toSorted((a, b) => b.name.length - a.name.length)[0];
  if (part === undefined) throw new Error(`No part is named in "${before}".`);
  await page.getByRole("link", { name: "Wear ahead" }).click();
  await expect(page.locator("#wear tbody tr").first()).toBeVisible();
  await page.getByLabel("Part", { exact: true }).selectOption(part.id);
  await page.getByLabel(/^Or fitted/).fill("0");
  await page.getByRole("button", { name: "Put it in the car's history" }).click();
  await page.getByRole("link", { name: "Back to the case" }).click();
  await expect(page.locator("#ranking")).toHaveAttribute("aria-busy", "false");
  await expect(first).not.toHaveText(before, { useInnerText: true });
  await page.getByRole("button", { name: /^Undo the last entry/ }).click();
  await expect(first).toHaveText(before, { useInnerText: true });
});

// UN R30 (from memory): 205/55R16 is 406 + 2 x 113 = 632 mm across; 3.05 x 632 = 1928 mm a turn (ETRTO, from memory).
const WHEEL_HZ = 100_000 / 3.6 / (3.05 * 632);

test("tyre size and speed give the orders, without a case @both", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Turning parts" }).click();
  await expect(page.getByText("Give the tyre size and the speed.")).toBeVisible();
  await page.getByLabel(/^Tyre size/).fill("205/55 R16 91V");
  await page.getByLabel(/^Final drive/).fill("3,7");
  await page.getByLabel(/^Road speed/).fill("100");
  await page.getByLabel(/^Or engine speed/).fill("2400");
  for (const [order, factor] of [1, 2, 3, 4].entries()) {
    const row = page.locator("#orders tbody tr").filter({
      has: page.getByRole("rowheader", { name: String(factor), exact: true }),
    });
    const [wheel = "", shaft = "", engine = ""] = await row.locator("td").allInnerTexts();
    expect(Number(wheel), `order ${order}`).toBeCloseTo(WHEEL_HZ * factor, 0);
    expect(Number(shaft)).toBeCloseTo(WHEEL_HZ * 3.7 * factor, 0);
    expect(Number(engine)).toBeCloseTo((2400 / 60) * factor, 1);
  }
  // A 31 in flotation tyre: 787 mm across, 2400 mm a turn.
  await page.getByLabel(/^Tyre size/).fill("31x10.50R15LT");
  await expect(page.locator("#orders")).toContainText("2400 mm a turn");
  await page.getByLabel(/^Tyre size/).fill("LT245/75R16");
  await expect(page.locator("#orders")).toContainText("LT245/75R16");
  await page.getByLabel(/^Tyre size/).fill("7.50R16LT");
  await expect(page.getByText("names neither an overall diameter nor a section height")).toBeVisible();
  await page.reload();
  await expect(page.getByLabel(/^Tyre size/)).toHaveValue("7.50R16LT");
  await expect(page.getByRole("button", { name: /into the case|Keep the figures/ })).toHaveCount(0);
  expect(await overhang(page)).toBe(0);
});

test("a measured shake is matched, and taken over into the case by hand only", async ({ page }) => {
  await openCase(page, "The steering wheel shakes at motorway speed.");
  await takeAll(page);
  const asked = page.url();
  await page.getByRole("link", { name: "Turning parts" }).click();
  await page.getByLabel(/^Tyre size/).fill("205/55R16");
  await page.getByLabel(/^Road speed/).fill("100");
  await page.getByLabel(/^Measured shake/).fill("14.3");
  await expect(page.locator("#matches")).toContainText("Road wheels, order 1");
  const take = page.getByRole("button", { name: /^Take it: vibration at once per wheel turn/ });
  await expect(take).toBeVisible();
  await page.goto(asked);
  await expect(page.locator("#timeline")).not.toContainText("once per wheel turn");
  await page.goBack();
  await take.click();
  await expect(page.getByText("Taken over into the case")).toBeVisible();
  await page.getByRole("link", { name: "Back to the case" }).click();
  await expect(page.locator(".so-far")).toContainText(/vibration at once per wheel turn/i);
  await expect(page.locator("#timeline")).toContainText("14.3 Hz at 100 km/h");
  // Undo takes the finding back; the figures stay.
  await page.getByRole("button", { name: /^Undo the last entry/ }).click();
  await expect(page.locator(".so-far")).not.toContainText(/vibration at once per wheel turn/i);
  await page.getByRole("link", { name: "Turning parts" }).click();
  await expect(page.getByLabel(/^Measured shake/)).toHaveValue("14.3");
});

test("free play at the rim stands beside the rules, at the limit as well as over it @both", async ({
  page,
}) => {
  const id = await caseOfCar(page, 90_000);
  await page.goto(`/shop/play?case=${id}`);
  await page.getByLabel("Rules of").selectOption("US");
  await page.getByLabel("In", { exact: true }).selectOption("in");
  await page.getByLabel("Diameter in").selectOption("in");
  const rule = page.locator("#limits tbody tr").filter({ hasText: "49 CFR 570.7(a)" });
  await page.getByLabel("Movement").fill("2");
  await expect(rule).toContainText("Needs the diameter of the steering wheel");
  // 49 CFR 570.7(a), Table 1: a wheel of 16 in or less, 2 in at most.
  await page.getByLabel("Diameter of the steering wheel").fill("16");
  await expect(rule).toContainText("At the limit itself");
  // Along the rim: 2 in on a radius of 8 in are 0.25 rad, 14.32 degrees.
  await expect(page.locator("#limits").getByRole("status").first()).toHaveText("50.8 mm = 2.000 in = 14.32°");
  await page.getByLabel("Movement").fill("2.01");
  await expect(rule).toContainText("Over the limit");
  await page.getByLabel("Movement").fill("1.99");
  await expect(rule).toContainText("Under the limit");
  await expect(page.locator("#limits")).toContainText("The maker's figure for this car decides");
  expect(await page.locator("main").innerText()).not.toMatch(/\bsafe\b|\bpass(es|ed)?\b/i);
  expect(await overhang(page)).toBe(0);

  await page.getByRole("button", { name: "Take it over into the case" }).click();
  await expect(page.getByText("Taken over into the case")).toBeVisible();
  await page.getByLabel("Movement").fill("much");
  await expect(page.getByText('"much" cannot be: give a number from 0 to 20, such as 0.5.')).toBeVisible();
  await page.getByRole("link", { name: "Back to the case" }).click();
  await expect(page.locator("#timeline")).toContainText("measured 50.546");
});

test("what is left of a tread stands beside what must be left", async ({ page }) => {
  const id = await caseOfCar(page, 90_000);
  await page.goto(`/shop/play?case=${id}`);
  await page.getByLabel("What was measured?").selectOption("tread-depth");
  await expect(page.getByLabel(/^Diameter/)).toHaveCount(0);
  await page.getByLabel("What is left").fill("1.6");
  // 1.6 mm in Great Britain, from a summary; 2/32 in (1.5875 mm) in the United States, 49 CFR 570.9(a), from memory.
  const british = page.locator("#limits tbody tr").filter({ hasText: "(GB)" });
  const light = page.locator("#limits tbody tr").filter({ hasText: "49 CFR 570.9(a)" });
  await expect(british).toContainText("Just what must be left");
  await expect(light).toContainText("More than must be left");
  // A tenth of a millimetre would show both figures as 1.6 mm.
  await expect(british).toContainText("1.60 mm");
  await expect(light).toContainText("1.59 mm");
  await page.getByLabel("What is left").fill("1.5");
  await expect(british).toContainText("Less than must be left");
  await expect(light).toContainText("Less than must be left");
  await expect(page.locator("#limits")).toContainText("The maker's figure for this car decides");
  expect(await page.locator("main").innerText()).not.toMatch(/\bsafe\b|\bpass(es|ed)?\b/i);
  expect(await overhang(page)).toBe(0);
});

test("the screens that work figures out pass axe, light and dark @both", async ({ page }) => {
  test.setTimeout(120_000);
  const id = await caseOfCar(page, 90_000);
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await page.goto(`/case/wear?id=${id}`);
    await page.locator("#wear tbody button").first().click();
    await expect(page.locator(".wear-curve")).toBeVisible();
    expect(await axeFindings(page), "wear").toEqual([]);
    await page.goto(`/shop/rotating?case=${id}`);
    await page.getByLabel(/^Tyre size/).fill("205/55R16");
    await page.getByLabel(/^Final drive/).fill("3");
    await page.getByLabel(/^Road speed/).fill("100");
    await page.getByLabel(/^Measured shake/).fill("43");
    await expect(page.locator("#matches")).toBeVisible();
    expect(await axeFindings(page), "turning parts").toEqual([]);
    await page.goto(`/shop/play?case=${id}`);
    await page.getByLabel("Movement").fill("20");
    await expect(page.locator("#limits")).toBeVisible();
    expect(await axeFindings(page), "free play").toEqual([]);
  }
});
