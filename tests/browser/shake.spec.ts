import { expect, type Page, test } from "@playwright/test";
import { parseTyreSize, tyreGeometry } from "../../lib/car/tyre-size.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { standardNormal } from "../../lib/maths/standard-normal.ts";
import { openCase, takeAll } from "./case-steps.ts";
import { look } from "./look.ts";

const CIRCUMFERENCE_M = tyreGeometry(parseTyreSize("205/55R16")).rollingCircumferenceMm / 1000;

type Reading = [seconds: number, x: number, y: number, z: number];

/** What a phone would say of a shake at a place of the path covered, in as much noise, with gravity along z. */
function readings(seconds: number, turnsAt: (t: number) => number, seed = 4): Reading[] {
  const uniform = seededUniform(seed);
  const noise = () => 0.3 * standardNormal(uniform);
  return Array.from({ length: seconds * 60 }, (_, k) => {
    const t = (k + 0.3 * (uniform() - 0.5)) / 60;
    return [t, noise(), 0.5 * Math.sin(2 * Math.PI * turnsAt(t)) + noise(), 9.81 + noise()];
  });
}

/** Events of a motion sensor with the times of the readings, on the page's own clock. */
async function feel(page: Page, told: readonly Reading[]): Promise<void> {
  await page.evaluate((list) => {
    const since = performance.now();
    for (const [seconds, x, y, z] of list) {
      const event = new DeviceMotionEvent("devicemotion", {
        accelerationIncludingGravity: { x, y, z },
        interval: 16,
      });
      Object.defineProperty(event, "timeStamp", { value: since + 1000 * seconds });
      window.dispatchEvent(event);
    }
  }, told);
}

test("a phone records a shake once a wheel turn, which goes into the case by hand only", async ({ page }) => {
  await openCase(page, "The steering wheel shakes at motorway speed.");
  await takeAll(page);
  await page.getByRole("link", { name: "Measure a shake" }).click();
  await expect(page.getByRole("button", { name: "Start" })).toHaveCount(0);
  await page.getByRole("button", { name: "I have read this and I am not driving" }).click();
  await page.getByLabel("Road speed").selectOption("typed");
  // 12 turns a second.
  const kmh = (12 * CIRCUMFERENCE_M * 3.6).toFixed(1);
  await page.getByLabel(/^Speed held/).fill(kmh);
  await page.getByLabel(/^Tyre size/).fill("205/55R16");
  await page.getByLabel("Record for").selectOption("10");
  await page.clock.install();
  await page.getByRole("button", { name: "Start" }).click();
  await expect(page.getByText("Lay the phone down: it begins shortly.")).toBeVisible();
  await feel(
    page,
    readings(1, (t) => 12 * t),
  );
  await page.clock.runFor(5200);
  await expect(page.getByText("Recording. Hold the speed.")).toBeVisible();
  await feel(
    page,
    readings(11, (t) => 12 * t).map(([t, ...axes]) => [t + 1, ...axes]),
  );
  await page.clock.runFor(400);
  const first = page.locator("#shakes tbody tr").first();
  await expect(first).toContainText("Road wheels, order 1");
  const measured = Number(await first.locator("td").first().innerText());
  expect(Math.abs(measured - 12)).toBeLessThanOrEqual(0.3);
  await expect(
    page.getByRole("img", { name: /^Strength of the shake by frequency\. Peaks: 12\.\d Hz/ }),
  ).toBeVisible();
  await look(page, "a measured shake");

  // Nothing is lost by a reload, and nothing is in the case yet.
  await page.reload();
  await expect(first).toContainText("Road wheels, order 1");
  await page.getByRole("button", { name: /^Take it: vibration at once per wheel turn/ }).click();
  await expect(page.getByText("Taken over into the case")).toBeVisible();
  await expect(page.getByLabel("Road speed")).toHaveValue("typed");
  await expect(first).toContainText("Road wheels, order 1");
  await page.getByRole("link", { name: "Back to the case" }).click();
  await expect(page.locator(".so-far")).toContainText(/vibration at once per wheel turn/i);
  await expect(page.locator("#timeline")).toContainText(/1[12]\.?\d* Hz at 83 km\/h \(0\.\d+ m\/s²\)/);
});

test("a recording from a file is read at the speed in it, followed as it wavers @desktop", async ({
  page,
}) => {
  const lines = (fromKmh: number, toKmh: number) => {
    const turns = (t: number) => (fromKmh * t + ((toKmh - fromKmh) / 40) * t * t) / 3.6 / CIRCUMFERENCE_M;
    const speed = (t: number) => fromKmh + ((toKmh - fromKmh) / 20) * t;
    return readings(20, turns).map(
      ([t, x, y, z], k) =>
        `${1000 * t},${x / 9.80665},${y / 9.80665},${z / 9.80665},${k % 60 === 0 ? speed(t) : ""}`,
    );
  };
  const file = (name: string, heading: string, rows: readonly string[]) => ({
    name,
    mimeType: "text/csv",
    buffer: Buffer.from([heading, ...rows].join("\n")),
  });
  const HEADING = "time (ms),x (g),y (g),z (g),speed (km/h)";
  await page.goto("/");
  await page.getByRole("link", { name: "Measure a shake" }).click();
  await page.getByLabel(/^Tyre size/).fill("205/55R16");
  await page.getByText("A recording from a file").click();
  const choose = page.locator("#record input[type=file]");
  await choose.setInputFiles(file("no-units.csv", "t,x,y,z", ["0,0,0,1"]));
  await expect(page.locator("#record")).toContainText('no-units.csv: Line 1: nothing says the unit of "t"');
  await choose.setInputFiles(file("wavering.csv", HEADING, lines(94, 100)));
  const first = page.locator("#shakes tbody tr").first();
  await expect(first).toContainText("Road wheels, order 1");
  // The rate at the mean speed.
  const turning = 97 / 3.6 / CIRCUMFERENCE_M;
  expect(Math.abs(Number(await first.locator("td").first().innerText()) - turning)).toBeLessThanOrEqual(0.3);
  await expect(page.locator("#shakes")).toContainText("Speed by GPS: 97 km/h on average, from 94 km/h");
  await choose.setInputFiles(file("uneven.csv", HEADING, lines(80, 100)));
  await expect(page.locator("#shakes")).toContainText("That is too uneven");
  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the recording as a file" }).click();
  expect((await saved).suggestedFilename()).toBe("shake.csv");
  // A machine without the sensor; the recording from before stays.
  await page.getByRole("button", { name: "I have read this and I am not driving" }).click();
  await page.getByRole("button", { name: "Record again" }).click();
  await expect(page.getByText("The motion sensor says nothing")).toBeVisible();
  await expect(page.locator("#shakes")).toContainText("That is too uneven");
});
