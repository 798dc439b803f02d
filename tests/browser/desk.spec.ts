import { expect, type Page, test } from "@playwright/test";
import { servedKnowledge, WORDS } from "./case-steps.ts";
import { look } from "./look.ts";

/*
 * Keystroke-level model of Card, Moran and Newell (Communications of the ACM 23, 1980; from memory): 0.28 s a key for an
 * average typist who is no secretary, 1.35 s to think before each act. What the customer says meanwhile is not counted.
 */
const KEY_S = 0.28;
const THINK_S = 1.35;
const TWO_MINUTES_S = 120;

/** A person at the keyboard, whose keys and acts are counted. */
class Typist {
  keys = 0;
  acts = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }
  async press(key: string): Promise<void> {
    this.keys += key.split("+").length;
    this.acts += 1;
    await this.#page.keyboard.press(key);
  }
  async type(text: string): Promise<void> {
    this.keys += text.length;
    this.acts += 1;
    await this.#page.keyboard.type(text);
  }
  get seconds(): number {
    return this.keys * KEY_S + this.acts * THINK_S;
  }
}

test("a call by keyboard alone: words, questions, decision, message, hand-over @desktop", async ({
  page,
  context,
}) => {
  test.setTimeout(90_000);
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.goto("/");
  const hand = new Typist(page);
  const call = page.getByRole("link", { name: "Take a call" });
  await expect(call).toBeVisible();
  await call.focus();
  await hand.press("Enter");

  // The keyboard stands where the words go.
  await expect(page.getByLabel("In the customer's own words")).toBeFocused();
  await hand.type(WORDS);
  await hand.press("Control+Enter");

  // What was read, each with the words that it came from; one act takes it all.
  await expect(page.getByRole("button", { name: /^Take all/ })).toBeFocused();
  await expect(page.locator(".proposal mark").first()).toBeVisible();
  await hand.press("Enter");

  // Figures answer the questions, the last one always that nobody knows; each leads to another question.
  const question = page.locator("#open-question");
  const choices = page.getByRole("group", { name: "Answers" }).getByRole("button");
  await expect(question).toBeFocused();
  const asked: string[] = [];
  for (const answer of ["1", "2", "last"] as const) {
    await expect(page.locator("#ask")).toHaveAttribute("aria-busy", "false");
    await expect(choices.last()).toHaveText(/Don't know$/);
    asked.push(await question.innerText());
    await hand.press(answer === "last" ? String(await choices.count()) : answer);
    await expect(question).not.toHaveText(asked.at(-1) ?? "");
  }
  expect(new Set(asked).size).toBe(3);
  await expect(question).toBeFocused();
  await hand.press("0");

  // The decision stands on dangers, time and parts; none of them calls the car safe.
  const decide = page.locator("#decide");
  await expect(page.locator("#decide-title")).toBeFocused();
  const { advice } = await servedKnowledge(page);
  const names = advice?.levels.map((level) => level.name) ?? [];
  const level = await decide.locator(".level").innerText();
  expect(names).toContain(level);
  await expect(decide).toContainText(/From (2\d|[3-6]\d) of 60 visits/, { timeout: 30_000 });
  await expect(decide.getByRole("img", { name: /Visits by length/ })).toBeVisible();
  expect(await decide.innerText()).not.toMatch(/\bsafe\b/i);
  await look(page, "desk with a decision");
  await hand.press("Control+Enter");

  // The message says it; it is copied whole, and the mail carries the same.
  await expect(page.locator("#say-title")).toBeFocused();
  await expect(decide).toContainText(`Decided: ${level}.`);
  await hand.press("Control+Enter");
  await expect(page.getByText("Copied.")).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toContain(advice?.levels.find(({ name }) => name === level)?.say ?? "no such level");
  for (const sign of advice?.stopIf ?? []) expect(copied).toContain(sign);
  expect(copied).toContain(WORDS);
  expect(copied).toMatch(/plan about .*(hour|minutes)/);
  expect(copied).not.toMatch(/\bsafe\b/i);
  const mail = new URL((await page.getByRole("link", { name: "Write a mail" }).getAttribute("href")) ?? "");
  expect(decodeURIComponent(/body=(.*)$/.exec(mail.search)?.[1] ?? "").replaceAll("\r\n", "\n")).toBe(copied);

  expect(hand.seconds, `${hand.keys} keys, ${hand.acts} acts`).toBeLessThan(TWO_MINUTES_S);

  // The hand-over is reached by Tab and holds what was told, decided and comes next.
  for (let tabs = 0; tabs < 12; tabs++) {
    await page.keyboard.press("Tab");
    if (
      await page
        .getByRole("link", { name: "Open the hand-over" })
        .evaluate((e) => e === document.activeElement)
    )
      break;
  }
  await page.keyboard.press("Enter");
  const sheet = page.getByRole("article");
  await expect(sheet).toContainText(WORDS);
  await expect(sheet).toContainText(level);
  expect(await sheet.locator(".handover-checks > li").count()).toBeGreaterThan(1);
  await look(page, "hand-over");
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0).toBeLessThanOrEqual(2);
});

test("what was refused or written is kept, and graver answers say that the decision is out of date", async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.goto("/case/desk");
  await page.getByLabel("In the customer's own words").fill(WORDS);
  await page.getByRole("button", { name: /^Open the case and read it/ }).click();
  const lines = page.locator(".proposal");
  await expect(lines.first()).toBeVisible();
  const count = await lines.count();
  const second = await lines.nth(1).locator("strong").innerText();
  await lines
    .first()
    .getByRole("button", { name: /^Not meant/ })
    .click();
  await expect(lines).toHaveCount(count - 1);
  // The keyboard goes on at the line that took its place.
  await expect(lines.first().getByRole("button").first()).toBeFocused();
  await expect(lines.first()).toContainText(second);
  await page
    .getByRole("button", { name: /^Take all|^Take it/ })
    .first()
    .click();

  const decide = page.locator("#decide");
  await expect(decide).toContainText(/From \d+ of 60 visits/);
  await look(page, "desk on a phone");
  await decide.getByRole("button", { name: /^Record the decision/ }).click();
  await expect(decide).toContainText("Decided: ");
  const message = page.getByLabel("Message to the customer");
  await message.fill("My own words to the customer.");
  await expect(decide.getByText(/speaks for more/)).toHaveCount(0);

  // What is told later may be graver than what was decided.
  await page.getByText("Search, or add more words").click();
  await page
    .getByLabel("Did the customer say more?")
    .fill("The steering wheel has a lot of free play and the brake pedal goes to the floor.");
  await page.getByRole("button", { name: "Read it" }).click();
  await page
    .getByRole("button", { name: /^Take all|^Take it/ })
    .first()
    .click();
  await expect(decide.getByRole("alert")).toContainText("speaks for more");
  await expect(page.getByRole("navigation", { name: "Next" }).locator("[aria-current=step]")).toHaveText(
    "Next: decide",
  );

  // To decide milder than what is worked out wants its reason.
  const record = decide.getByRole("button", { name: /^Record the decision/ });
  const { advice } = await servedKnowledge(page);
  await decide.getByLabel("About driving").selectOption(advice?.levels.at(-1)?.id ?? "");
  await expect(record).toBeDisabled();
  await decide.getByLabel("Why milder than worked out?").fill("Looked at by a patrol at the roadside.");
  await expect(record).toBeEnabled();

  await page.reload();
  await expect(message).toHaveValue("My own words to the customer.");
});
