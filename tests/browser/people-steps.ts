import { type Browser, type BrowserContext, expect, type Page } from "@playwright/test";
import type { OwnServer } from "./own-server.ts";

/** Somebody of the invented workshop "Harbour Lane Garage". */
export interface Somebody {
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly role: string;
}

const somebody = (name: string, role: string): Somebody => ({
  name,
  role,
  email: `${name.toLowerCase()}@harbour-lane.example`,
  password: `${name} drinks cold tea`,
});

export const OWNER = somebody("Orla", "owner");
export const TECHNICIAN = somebody("Tomas", "technician");
export const TRAINEE = somebody("Tina", "trainee");
export const OTHER_TRAINEE = somebody("Uwe", "trainee");

/** A device: a browser with a store of its own. */
export async function device(browser: Browser, server: Pick<OwnServer, "url">): Promise<BrowserContext> {
  return browser.newContext({ baseURL: server.url, locale: "en-GB", timezoneId: "Europe/London" });
}

/** Makes the first account, the owner's, on the screen for it. */
export async function setUp(page: Page): Promise<void> {
  await page.goto("/set-up");
  await page.getByLabel("Your name").fill(OWNER.name);
  await page.getByLabel("E-mail address").fill(OWNER.email);
  await page.getByLabel("Password", { exact: true }).fill(OWNER.password);
  await page.getByRole("button", { name: "Make the account and sign in" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Cases" })).toBeVisible();
}

/** Makes an account as the owner, on the screen for it. */
export async function makeAccount(page: Page, one: Somebody): Promise<void> {
  const form = page.locator("#new-account");
  await form.getByLabel("Name").fill(one.name);
  await form.getByLabel("E-mail address").fill(one.email);
  await form.getByLabel("Role").selectOption(one.role);
  await form.getByLabel("First password").fill(one.password);
  await form.getByRole("button", { name: "Make the account" }).click();
  await expect(form.getByRole("status")).toContainText(`Tell ${one.name}`);
}

export async function signIn(page: Page, one: Somebody): Promise<void> {
  await page.goto("/sign-in");
  await page.getByLabel("E-mail address").fill(one.email);
  await page.getByLabel("Password", { exact: true }).fill(one.password);
  await page.getByRole("button", { name: "Sign in", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Cases" })).toBeVisible();
}

export async function signOut(page: Page): Promise<void> {
  await page.goto("/account");
  await page.getByRole("button", { name: "Sign out here" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Sign in" })).toBeVisible();
}

/** Opens a case of that name and waits until the server has it; gives the address of its page. */
export async function openNamed(page: Page, vehicle: string): Promise<string> {
  await page.goto("/case/new");
  await page.getByLabel("Vehicle").fill(vehicle);
  await page.getByRole("button", { name: "Open the case" }).click();
  await expect(page.getByRole("heading", { level: 1, name: vehicle })).toBeVisible();
  await expect(page.locator(".kept-line")).toHaveText("Kept on this device and on the workshop's server.");
  return page.url();
}

export async function addNote(page: Page, text: string): Promise<void> {
  await page.getByLabel("Add a note").fill(text);
  await page.getByRole("button", { name: "Save the note" }).click();
  await expect(page.locator("#timeline")).toContainText(text);
}

/** Every line of the timeline, newest first. */
export async function timelineText(page: Page): Promise<string[]> {
  return page.locator("#timeline .entry-words").allInnerTexts();
}
