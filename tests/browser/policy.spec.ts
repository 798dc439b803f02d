import { expect, type Page, test } from "@playwright/test";
import { openCase, takeAll } from "./case-steps.ts";

/** One of each kind of page that is there by itself; what needs a case is gone through below. */
const ADDRESSES = [
  "/",
  "/case/new",
  "/case/desk",
  "/case?id=nobody",
  "/parts",
  "/checks",
  "/findings",
  "/search?q=joint",
  "/health",
  "/releases",
  "/shop/play",
  "/shop/rotating",
  "/shop/shake",
  "/exercise",
  "/exercise/work?id=nobody",
  "/exercise/debrief?id=nobody",
  "/teach",
  "/teach/exercise",
  "/teach/board",
  "/teach/sheet?id=nobody",
  "/nowhere",
  "/parts/nothing-by-that-name",
];

/** Everything that the page's policy refused, and every error on the console, from here on. */
async function refusals(page: Page, expected: RegExp): Promise<string[]> {
  const found: string[] = [];
  await page.exposeFunction("noteRefusal", (text: string) => found.push(text));
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const { noteRefusal } = window as unknown as { noteRefusal: (text: string) => void };
      noteRefusal(`${event.violatedDirective}: ${event.blockedURI} at ${location.pathname}`);
    });
  });
  page.on("pageerror", (error) => found.push(`thrown: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error" && !expected.test(message.text())) found.push(message.text());
  });
  return found;
}

/** React has taken over the page: it leaves its mark on each element that it keeps. */
async function takenOver(page: Page): Promise<void> {
  await expect
    .poll(() =>
      page.evaluate(() =>
        Object.keys(document.querySelector("main") ?? {}).some((key) => key.startsWith("__reactFiber")),
      ),
    )
    .toBe(true);
}

test("no kind of page has anything that its security policy refuses, and React takes over each", async ({
  page,
}) => {
  // The two addresses that lead nowhere answer 404, which the browser notes.
  const found = await refusals(page, /status of 404/);
  const response = await page.goto("/");
  expect(response?.headers()["content-security-policy"]).toContain("script-src 'self';");
  expect(response?.headers()["content-security-policy"]).not.toContain("unsafe");
  for (const address of ADDRESSES) {
    await page.goto(address);
    await takenOver(page);
  }
  for (const kind of ["parts", "checks", "findings"]) {
    await page.goto(`/${kind}`);
    const first = await page.locator(`main a[href^="/${kind}/"]`).first().getAttribute("href");
    await page.goto(first ?? "");
    await takenOver(page);
  }
  await openCase(page);
  await takeAll(page);
  await page.getByRole("button", { name: "Give the verdict" }).and(page.locator("[type=submit]")).click();
  await page.getByRole("link", { name: "Open the job card" }).click();
  await expect(page.getByRole("article")).toBeVisible();
  expect(found).toEqual([]);
});

test("a script and a style that come with text are refused by the browser", async ({ page }) => {
  await page.goto("/");
  await takenOver(page);
  const result = await page.evaluate(async () => {
    const refused = new Promise<string>((resolve) => {
      document.addEventListener("securitypolicyviolation", (event) => resolve(event.violatedDirective), {
        once: true,
      });
    });
    const script = document.createElement("script");
    script.textContent = "window.ran = true";
    document.body.append(script);
    return { directive: await refused, ran: "ran" in window };
  });
  expect(result).toEqual({ directive: "script-src-elem", ran: false });
});

test("every answer of the server says how it may be used", async ({ request }) => {
  for (const address of ["/", "/nowhere", "/knowledge/index.json", "/icon.svg"]) {
    const headers = (await request.get(address)).headers();
    expect(headers["x-content-type-options"], address).toBe("nosniff");
    expect(headers["referrer-policy"], address).toBe("same-origin");
    expect(headers["cross-origin-opener-policy"], address).toBe("same-origin");
    expect(headers["cross-origin-resource-policy"], address).toBe("same-origin");
    expect(headers["permissions-policy"], address).toContain("camera=()");
    // W3C Device Orientation and Motion, "devicemotion": both are needed for a page to get any motion.
    expect(headers["permissions-policy"], address).toContain("accelerometer=(self)");
    expect(headers["permissions-policy"], address).toContain("gyroscope=(self)");
    expect(headers["content-security-policy"], address).toContain("frame-ancestors 'none'");
    expect(headers["x-powered-by"], address).toBeUndefined();
  }
});
