import { expect, type Page, test } from "@playwright/test";
import { look } from "./look.ts";
import { ownServer, type OwnServer } from "./own-server.ts";
import {
  addNote,
  device,
  makeAccount,
  openNamed,
  OTHER_TRAINEE,
  OWNER,
  setUp,
  signIn,
  signOut,
  TECHNICIAN,
  TRAINEE,
} from "./people-steps.ts";

let server: OwnServer;

test.beforeEach(async () => {
  server = await ownServer();
});

test.afterEach(async () => {
  await server.stop();
});

const caseLinks = (page: Page) => page.locator("#open-cases .case-link");

test("each role sees the cases that are its own to see, and nobody those of the person before", async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const desk = await device(browser, server);
  const owner = await desk.newPage();
  await setUp(owner);
  await owner.goto("/people");
  for (const one of [TECHNICIAN, TRAINEE, OTHER_TRAINEE]) await makeAccount(owner, one);
  await expect(owner.locator(".account-line")).toHaveCount(4);

  // One tablet that goes from hand to hand.
  const tablet = await device(browser, server);
  const page = await tablet.newPage();
  await signIn(page, TRAINEE);
  const address = await openNamed(page, "invented practice car");
  await addNote(page, "what Tina heard");
  await signOut(page);

  await signIn(page, OTHER_TRAINEE);
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device.");
  await expect(caseLinks(page)).toHaveCount(0);
  await page.goto(address);
  await expect(page.getByRole("heading", { name: "This case is not on this device" })).toBeVisible();
  await expect(page.locator("body")).not.toContainText("what Tina heard");

  await signOut(page);
  await signIn(page, TECHNICIAN);
  await page
    .locator("#open-cases")
    .getByRole("link", { name: /invented practice car/ })
    .click();
  await expect(page.locator("#timeline")).toContainText("what Tina heard");

  // Whose device it is decides what opens without a network, too.
  await signOut(page);
  await signIn(page, TRAINEE);
  await expect(
    page.locator("#open-cases").getByRole("link", { name: /invented practice car/ }),
  ).toBeVisible();
});

test("signed in, entries carry the account's name, and a session ended from elsewhere puts the cases away", async ({
  browser,
}) => {
  test.setTimeout(120_000);
  const desk = await device(browser, server);
  const owner = await desk.newPage();
  await setUp(owner);
  await owner.goto("/people");
  await makeAccount(owner, TECHNICIAN);

  const phone = await device(browser, server);
  const page = await phone.newPage();
  await signIn(page, TECHNICIAN);
  const address = await openNamed(page, "invented saloon");
  const id = new URL(address).searchParams.get("id");
  const entries = await (await page.request.get(`/api/v1/cases/${id}/entries`)).text();
  expect(entries).toContain(`"by":"${TECHNICIAN.name}"`);

  // Entered while the server cannot be reached, and then the session is ended on another device.
  await page.route("**/api/v1/cases/**", (route) => route.abort());
  await addNote(page, "not gone out yet");
  const line = owner.locator(".account-line", { hasText: TECHNICIAN.name });
  await line.locator("summary").click();
  await line.getByRole("button", { name: `Shut ${TECHNICIAN.name} out` }).click();
  await expect(line).toContainText("shut out");
  await page.unroute("**/api/v1/cases/**");
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1, name: "Sign in" })).toBeVisible();
  await expect(page.locator("main")).toContainText(`The session of ${TECHNICIAN.name} has ended`);
  await expect(page.locator("main")).toContainText("1 entry that waits for the server");
  await page.getByLabel("E-mail address").fill(TECHNICIAN.email);
  await page.getByLabel("Password", { exact: true }).fill(TECHNICIAN.password);
  await page.getByRole("button", { name: "Sign in", exact: true }).click();
  await expect(page.locator("main .trouble")).toBeVisible();

  await line.getByRole("button", { name: `Let ${TECHNICIAN.name} in again` }).click();
  await expect(line).not.toContainText("shut out");
  await signIn(page, TECHNICIAN);
  await page.goto(address);
  await expect(page.locator("#timeline")).toContainText("not gone out yet");
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
});

test("signing out with entries that wait warns, keeps them, and never sends them for somebody else", async ({
  browser,
}) => {
  test.setTimeout(120_000);
  const desk = await device(browser, server);
  const page = await desk.newPage();
  await setUp(page);
  await page.goto("/people");
  await makeAccount(page, TECHNICIAN);
  const address = await openNamed(page, "invented roadster");
  const id = new URL(address).searchParams.get("id");
  await page.route("**/api/v1/cases/**", (route) => route.abort());
  await addNote(page, "for later");
  await page.goto("/account");
  await page.getByRole("button", { name: "Sign out here" }).click();
  await expect(page.getByRole("group", { name: "Entries that wait" })).toContainText("1 entry has not gone");
  await page.getByRole("button", { name: "Sign out all the same" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Sign in" })).toBeVisible();
  await page.unroute("**/api/v1/cases/**");

  await signIn(page, TECHNICIAN);
  await expect(page.locator("#open-cases").getByRole("link", { name: /invented roadster/ })).toBeVisible();
  await page.locator("#open-cases .case-link").click();
  await expect(page.getByRole("heading", { level: 1, name: "invented roadster" })).toBeVisible();
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
  await expect(page.locator("#timeline")).not.toContainText("for later");

  await signOut(page);
  await signIn(page, OWNER);
  const stored = async () => (await page.request.get(`/api/v1/cases/${id}/entries`)).text();
  await expect.poll(stored).toContain("for later");
});

test("cases made before anybody signed in are offered and taken over", async ({ browser }) => {
  test.setTimeout(120_000);
  const desk = await device(browser, server);
  await setUp(await desk.newPage());

  const phone = await device(browser, server);
  const page = await phone.newPage();
  await page.goto("/case/new");
  await page.getByLabel("Vehicle").fill("invented minibus");
  await page.getByRole("button", { name: "Open the case" }).click();
  await expect(page.locator(".kept-line")).toContainText("go to the workshop's server when you sign in");
  await signIn(page, OWNER);
  await expect(page.locator("#open-cases .case-line")).toHaveCount(0);
  await page.getByRole("button", { name: "Take it over" }).click();
  await page
    .locator("#open-cases")
    .getByRole("link", { name: /invented minibus/ })
    .click();
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
});

test("a link opens exactly one case, to read only, until it is ended", async ({ browser }) => {
  test.setTimeout(120_000);
  const desk = await device(browser, server);
  const page = await desk.newPage();
  await setUp(page);
  const secret = await openNamed(page, "invented secret car");
  const address = await openNamed(page, "invented shared car");
  await addNote(page, "to be read by the customer");
  await page.getByText("Let somebody outside read this case").click();
  await page.getByRole("button", { name: "Make a link" }).click();
  const link = await page.getByLabel("The new link, shown this once").inputValue();
  expect(new URL(link).pathname).toBe("/shared");
  // At least 128 random bits: 22 characters of base64url (6 bits each).
  expect(new URL(link).hash.length - 1).toBeGreaterThanOrEqual(22);

  const outside = await device(browser, server);
  const reader = await outside.newPage();
  const asked: string[] = [];
  reader.on("request", (request) => asked.push(request.url()));
  await reader.goto(link);
  await expect(reader.getByRole("heading", { level: 1, name: "invented shared car" })).toBeVisible();
  await expect(reader.locator("#timeline")).toContainText("to be read by the customer");
  await expect(reader.getByRole("button", { name: /^Undo/ })).toHaveCount(0);
  await expect(reader.getByRole("textbox")).toHaveCount(0);
  // The secret is in no address that goes over the line.
  const token = new URL(link).hash.slice(1);
  expect(asked.filter((url) => url.includes(token) && !url.includes("#"))).toEqual([]);

  for (const other of [secret, address]) {
    const id = new URL(other).searchParams.get("id");
    const reply = await reader.request.get(`/api/v1/cases/${id}`, {
      headers: { authorization: `Bearer ${token}` },
    });
    expect(reply.status()).toBe(401);
  }
  await reader.goto("/");
  await expect(caseLinks(reader)).toHaveCount(0);

  // Shown once: another look at the case lists the link without its secret.
  await page.reload();
  await page.getByText("Let somebody outside read this case").click();
  await expect(page.getByRole("list", { name: "Links that work" }).getByRole("listitem")).toHaveCount(1);
  expect(await page.content()).not.toContain(token);
  await page.getByRole("button", { name: /^End it now/ }).click();
  await expect(page.getByRole("list", { name: "Links that work" })).toHaveCount(0);
  await reader.goto(link);
  await expect(reader.getByRole("heading", { name: "This link opens nothing any more" })).toBeVisible();
  await reader.goto("/shared#short");
  await expect(reader.getByRole("heading", { name: "The link is not whole" })).toBeVisible();
});

test("forms say what is wrong beside the field and are known to password managers", async ({ browser }) => {
  const desk = await device(browser, server);
  const page = await desk.newPage();
  await page.goto("/set-up");
  await page.getByLabel("Your name").fill("Orla");
  await page.getByLabel("E-mail address").fill(OWNER.email);
  await page.getByLabel("Password", { exact: true }).fill("too short");
  await page.getByRole("button", { name: "Make the account and sign in" }).click();
  const password = page.getByLabel("Password", { exact: true });
  await expect(password).toHaveAttribute("aria-invalid", "true");
  await expect(password).toHaveAccessibleDescription(/9 characters; 12 are the least/);
  // Values of autocomplete as the HTML standard lists them (4.10.18.7.1).
  await expect(password).toHaveAttribute("autocomplete", "new-password");
  await expect(page.getByLabel("E-mail address")).toHaveAttribute("autocomplete", "username");
  await password.fill(OWNER.password);
  await page.getByRole("button", { name: "Make the account and sign in" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Cases" })).toBeVisible();

  await page.goto("/account");
  await expect(page.getByLabel("Password now")).toHaveAttribute("autocomplete", "current-password");
  await page.getByLabel("Password now").fill("not this one either");
  await page.getByLabel("New password").fill("a new one for every day");
  await page.getByRole("button", { name: "Change the password" }).click();
  await expect(page.locator("#password .trouble").first()).toBeVisible();
  await page.getByLabel("Password now").fill(OWNER.password);
  await page.getByRole("button", { name: "Change the password" }).click();
  await expect(page.locator("#password")).toContainText("Changed.");
  await page.getByRole("button", { name: "Sign out on every device" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Sign in" })).toBeVisible();
  await signIn(page, { ...OWNER, password: "a new one for every day" });
});

test("the screens of accounts pass axe, 7:1 contrast and target sizes, light and dark @both", async ({
  browser,
}, info) => {
  test.setTimeout(180_000);
  const { viewport, isMobile = false, hasTouch = false } = info.project.use;
  const context = await browser.newContext({
    baseURL: server.url,
    locale: "en-GB",
    timezoneId: "Europe/London",
    isMobile,
    hasTouch,
    ...(viewport !== undefined && { viewport }),
  });
  const page = await context.newPage();
  const both = async (screen: string) => {
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      await look(page, `${screen}, ${colorScheme}`);
    }
  };
  await page.goto("/set-up");
  await expect(page.getByLabel("Your name")).toBeVisible();
  await both("the first account");
  await page.goto("/account");
  await expect(page.getByRole("link", { name: "Make the first account" })).toBeVisible();
  await both("no accounts");
  await setUp(page);
  await page.goto("/people");
  await makeAccount(page, TECHNICIAN);
  await page.locator(".account-line summary").last().click();
  await both("people");
  await page.goto("/account");
  await expect(page.getByRole("button", { name: "Sign out here" })).toBeVisible();
  await both("own account");
  await openNamed(page, "invented hatchback");
  await page.getByText("Let somebody outside read this case").click();
  await page.getByRole("button", { name: "Make a link" }).click();
  const link = page.getByLabel("The new link, shown this once");
  await expect(link).toBeVisible();
  await both("case with a link");
  await page.goto(await link.inputValue());
  await expect(page.getByRole("heading", { level: 1, name: "invented hatchback" })).toBeVisible();
  await both("shared case");
  await signOut(page);
  await both("sign in");
  await page.goto("/");
  await expect(page.getByRole("link", { name: "Sign in" })).toBeVisible();
  await both("cases, signed out");
});
