import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { axeFindings, firstSuspect, openCase, rankingText, servedKnowledge, takeAll } from "./case-steps.ts";

/** Least size of a touch target in CSS pixels, as on the other screens. */
const TARGET = 48;

/** Links and buttons smaller than the target; words within a sentence are let off. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const all = [...document.querySelectorAll<HTMLElement>("a, button, summary, input")];
    return all
      .filter((e) => e.checkVisibility() && e.closest("p, .hidden, .skip") === null)
      .filter((e) => {
        const { width, height } = e.getBoundingClientRect();
        return width < least - 0.5 || height < least - 0.5;
      })
      .map((e) => `${e.tagName} ${e.textContent?.slice(0, 40)}`);
  }, TARGET);
}

async function look(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
  expect(await axeFindings(page), address).toEqual([]);
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang, address).toBe(0);
  expect(await tooSmall(page), address).toEqual([]);
}

for (const colorScheme of ["light", "dark"] as const) {
  test(`one page of each kind passes axe, 7:1 contrast and target sizes, ${colorScheme} @both`, async ({
    page,
  }) => {
    test.setTimeout(180_000);
    await page.emulateMedia({ colorScheme });
    const knowledge = await servedKnowledge(page);
    const grave = knowledge.faults.find(
      ({ severity, life }) => severity.word === "dangerous" && "km" in life,
    );
    const cautious = knowledge.checks.find(
      ({ cautions, notWhen }) => cautions.length > 0 && notWhen.length > 0,
    );
    const graded = knowledge.limits.quantities.find(({ observation }) => observation !== undefined);
    for (const address of [
      "/parts",
      `/parts/${grave?.part}`,
      "/checks",
      `/checks/${cautious?.id}`,
      "/findings",
      `/findings/${knowledge.complaints[0]?.id}`,
      `/findings/${knowledge.features.find(({ relative }) => relative !== undefined)?.id}`,
      `/findings/${graded?.observation}`,
      `/findings/${knowledge.contexts[0]?.id}`,
    ])
      await look(page, address);
    await page.goto("/search?q=ball%20joint");
    await expect(page.locator("form li").first()).toBeVisible();
    expect(await axeFindings(page), "search").toEqual([]);
    expect(await tooSmall(page), "search").toEqual([]);
  });
}

test("from a suspect to its part and back nothing half-done is lost @both", async ({ page }) => {
  await openCase(page);
  await takeAll(page);
  await firstSuspect(page).click();
  await expect(page.getByRole("link", { name: "About this part" })).toBeVisible();
  const name = await firstSuspect(page).locator(".suspect-name").innerText();
  const ranking = await rankingText(page);
  await page.getByText("Cannot be done").click();
  await page.getByLabel("Another reason").fill("bolt seized");
  await page.getByLabel("Add a note").fill("half a no");

  await page.getByRole("link", { name: "About this part" }).click();
  await expect(page).toHaveURL(/\/parts\/[a-z-]+#/);
  await expect(page.locator("h1")).toBeVisible();
  expect(name.toLowerCase()).toContain((await page.locator("h1").innerText()).toLowerCase());
  await page
    .locator("main")
    .getByRole("link", { name: /^Check: / })
    .first()
    .click();
  await expect(page).toHaveURL(/\/checks\//);

  await page.getByRole("link", { name: /^Back to the case/ }).click();
  await expect(page.getByRole("link", { name: "About this part" })).toBeVisible();
  await expect(page.locator(".why")).toBeVisible();
  await expect(firstSuspect(page)).toBeInViewport();
  await expect.poll(() => rankingText(page)).toBe(ranking);
  await expect(page.getByLabel("Another reason")).toHaveValue("bolt seized");
  await expect(page.getByLabel("Add a note")).toHaveValue("half a no");
});

test("the ranking and the check card lead to their pages in one tap, and back leads back", async ({
  page,
}) => {
  await openCase(page);
  await takeAll(page);
  await page
    .locator("#ranking")
    .getByRole("link", { name: /^About the part: / })
    .first()
    .click();
  await expect(page).toHaveURL(/\/parts\//);
  await page.goBack();
  await expect(firstSuspect(page)).toBeVisible();
  await page.getByRole("navigation", { name: "Next" }).getByRole("button").click();
  const check = page.getByRole("link", { name: "About this check" });
  if ((await check.count()) === 0) {
    await page.getByText("Other good checks and questions").click();
    await page.locator("#next .line-button").filter({ hasNotText: "Ask:" }).first().click();
  }
  const opened = await page.locator("#open-check").innerText();
  await check.click();
  await expect(page).toHaveURL(/\/checks\//);
  expect(opened.toLowerCase()).toContain((await page.locator("h1").innerText()).toLowerCase());
  await page.goBack();
  await expect(page.locator("#open-check")).toHaveText(opened);
});

/** Links within the site that a page holds, as path and anchor. */
function linksOf(html: string): { path: string; anchor: string }[] {
  const plain = html.replace(/<script[\s\S]*?<\/script>/g, "");
  return [...plain.matchAll(/href="(\/[^"?#]*|)(?:\?[^"#]*)?(?:#([^"]*))?"/g)]
    .map(([, path = "", anchor = ""]) => ({ path, anchor }))
    .filter(({ path }) => !path.startsWith("/_next/"));
}

async function fetched(request: APIRequestContext, path: string): Promise<string> {
  const response = await request.get(path);
  expect(response.status(), path).toBe(200);
  return (response.headers()["content-type"] ?? "").includes("text/html") ? response.text() : "";
}

test("every page can be reached, every link leads somewhere, every page has its own title", async ({
  page,
}) => {
  test.setTimeout(300_000);
  const pages = new Map<string, string>();
  const wanted: { from: string; path: string; anchor: string }[] = [];
  const queue = ["/parts"];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (pages.has(path)) continue;
    const html = await fetched(page.request, path);
    pages.set(path, html);
    // Screens of the workshop are reached too, but only pages to read are gone through.
    if (!/^\/(parts|checks|findings|search)/.test(path)) continue;
    for (const link of linksOf(html)) {
      const target = link.path === "" ? path : link.path;
      wanted.push({ from: path, path: target, anchor: link.anchor });
      if (!pages.has(target)) queue.push(target);
    }
  }
  const knowledge = await servedKnowledge(page);
  const { parts, checks, complaints, features, observations, contexts } = knowledge;
  const expected = [
    ...parts.map(({ id }) => `/parts/${id}`),
    ...checks.map(({ id }) => `/checks/${id}`),
    ...[complaints, features, observations, contexts].flat().map(({ id }) => `/findings/${id}`),
  ];
  expect(expected.filter((path) => !pages.has(path))).toEqual([]);
  const dead = wanted.filter(
    ({ path, anchor }) => anchor !== "" && !(pages.get(path) ?? "").includes(`id="${anchor}"`),
  );
  expect(dead).toEqual([]);
  const titles = expected.map(
    (path) => `${path.split("/")[1]} ${/<title>([^<]*)/.exec(pages.get(path) ?? "")?.[1]}`,
  );
  expect(new Set(titles).size).toBe(titles.length);
  for (const path of expected) {
    const html = pages.get(path) ?? "";
    expect(/<meta name="description" content="[^"]{20,}"/.test(html), path).toBe(true);
    expect(html.length, path).toBeLessThan(450_000);
  }
});

test("printed, a page shows what is folded away and leaves out the way round", async ({ page }) => {
  const knowledge = await servedKnowledge(page);
  const fault = knowledge.faults.find(({ shows }) =>
    shows.some(({ features }) => Object.keys(features).length > 0),
  );
  await page.goto(`/parts/${fault?.part}`);
  const folded = page.locator("details dl").first();
  await expect(folded).toBeHidden();
  await page.emulateMedia({ media: "print" });
  await expect(folded).toBeVisible();
  await expect(page.locator(".site-head")).toBeHidden();
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
});

test("search finds all kinds by any name, from the address and with the keyboard alone @both", async ({
  page,
}) => {
  const knowledge = await servedKnowledge(page);
  await page.goto("/search?q=sway%20bar%20link");
  await expect(page.getByRole("searchbox")).toHaveValue("sway bar link");
  await expect(page.locator("form li").first()).toBeVisible();

  // One record of each kind, asked by its own name.
  const wanted = [
    [knowledge.parts[3]?.name, "/parts/"],
    [knowledge.checks[3]?.name, "/checks/"],
    [knowledge.complaints[3]?.name, "/findings/"],
    [knowledge.observations[3]?.name, "/findings/"],
  ] as const;
  for (const [name = "", kind] of wanted) {
    await page.getByRole("searchbox").fill(name);
    const hit = page.locator(`form a[href^="${kind}"]`, { hasText: new RegExp(`^${escaped(name)}$`, "i") });
    await expect(hit.first(), name).toBeVisible();
    expect(new URL(page.url()).searchParams.get("q")).toBe(name);
  }

  await page.getByRole("searchbox").focus();
  await page.getByRole("searchbox").fill("gaiter split");
  await expect(page.getByRole("status")).toHaveText(/found/);
  await expect(page.locator('form a[href*="#"]').first()).toBeVisible();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowUp");
  await expect(page.locator("form a").first()).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/(parts|checks|findings)\//);
  await page.goBack();
  await expect(page.getByRole("searchbox")).toHaveValue("gaiter split");

  await page.getByRole("searchbox").fill("zzzzqqqq");
  await expect(page.getByText("Nothing by that name")).toBeVisible();
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
