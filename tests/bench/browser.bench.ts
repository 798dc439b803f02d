import { type ChildProcess, spawn } from "node:child_process";
import { loadavg } from "node:os";
import { join } from "node:path";
import { type Browser, type CDPSession, chromium, type Page, type Worker } from "@playwright/test";
import { BROWSER_ADVICE, findBrowser } from "../support/find-browser.mjs";
import { quantile, table } from "./timing.ts";

/** Complaints as owners may tell them; written for this bench. */
const COMPLAINTS = [
  "There is a clunk from the front left when I drive over small bumps and cobbles, and it is getting worse.",
  "The steering wheel shakes when I brake from motorway speed.",
  "A humming noise from the rear that gets louder with speed.",
  "The car pulls to the right and the front tyres are worn on the inside.",
];
/** Answers to each complaint. */
const ANSWERS = 12;
const SLOWED = 6;
/** Event timing tells nothing of interactions that are faster. Units: ms. */
const SHORTEST_SHOWN = 16;
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true };

interface Sample {
  /** Weighing and choosing the next check, in the worker. Units: ms. */
  readonly step: number;
  /** Everything that the worker did for the answer: also what pays, batches, previews. */
  readonly all: number;
}

interface Session {
  readonly samples: readonly Sample[];
  /** From each tap on an answer to the next paint; undefined below what is shown. */
  readonly paints: readonly (number | undefined)[];
  /** How many times slower a loop ran than unslowed. */
  readonly mainSlowed: number;
  readonly workerSlowed: number;
}

/** Answers given in the app as a person gives them: the worker's time for each, and from the tap to the next paint. */
export async function inTheBrowser(): Promise<string> {
  const executablePath = await findBrowser();
  if (executablePath === undefined) throw new Error(BROWSER_ADVICE);
  const server = await startApp();
  try {
    const browser = await chromium.launch({ executablePath });
    try {
      const plain = await session(browser, server.url, 1);
      const slow = await session(browser, server.url, SLOWED);
      return report(plain, slow);
    } finally {
      await browser.close();
    }
  } finally {
    server.stop();
  }
}

function report(plain: Session, slow: Session): string {
  const worker = (name: string, pick: (s: Sample) => number, of: Session, times = 1) => {
    const values = of.samples.map((s) => times * pick(s));
    return [name, values.length, Math.min(...values), quantile(values, 0.5), quantile(values, 0.95)];
  };
  const paint = (name: string, { paints }: Session) => {
    const values = paints.map((p) => p ?? 0);
    const shown = (ms: number): string | number => (ms === 0 ? `<${SHORTEST_SHOWN}` : ms);
    const ofShare = (share: number) => shown(quantile(values, share));
    return [name, values.length, shown(Math.min(...values)), ofShare(0.5), ofShare(0.95)];
  };
  const rows = [
    worker("weigh + next check, in the worker", (s) => s.step, plain),
    worker("everything the worker does for an answer", (s) => s.all, plain),
    paint("tap on an answer to next paint", plain),
    worker("slowed: weigh + next check", (s) => s.step, slow),
    // Chromium's brake may hold the page alone; then six times the plain figure stands for the slowed one.
    worker(`${SLOWED} x plain: weigh + next check`, (s) => s.step, plain, SLOWED),
    paint("slowed: tap on an answer to next paint", slow),
  ];
  return [
    table(["", "answers", "min ms", "median ms", "p95 ms"], rows),
    `Slowed: the same loop took ${slow.mainSlowed.toPrecision(2)} times as long in the page, ${slow.workerSlowed.toPrecision(2)} times in the worker.`,
    `Load of the machine in the last minutes: ${loadavg()
      .map((load) => load.toFixed(1))
      .join(", ")}.`,
  ].join("\n");
}

async function session(browser: Browser, url: string, times: number): Promise<Session> {
  const context = await browser.newContext({ ...PHONE, baseURL: url, locale: "en-GB" });
  const samples: Sample[] = [];
  const paints: (number | undefined)[] = [];
  let mainSlowed = 1;
  let workerSlowed = 1;
  for (const words of COMPLAINTS) {
    const page = await context.newPage();
    await openCase(page, words);
    const worker = page.workers()[0];
    if (worker === undefined) throw new Error("The app runs no worker.");
    await watchPaints(page);
    if (times > 1) {
      const before = [await page.evaluate(loopMs), await worker.evaluate(loopMs)] as const;
      await slow(await context.newCDPSession(page), times);
      mainSlowed = (await page.evaluate(loopMs)) / before[0];
      workerSlowed = (await worker.evaluate(loopMs)) / before[1];
    }
    for (let k = 0; k < ANSWERS; k++) {
      await worker.evaluate(() => performance.clearMeasures());
      if (!(await answer(page, k))) break;
      await settled(page);
      samples.push(await sampleOf(worker));
      paints.push(await lastPaint(page));
    }
    await page.close();
  }
  await context.close();
  return { samples, paints, mainSlowed, workerSlowed };
}

async function openCase(page: Page, words: string): Promise<void> {
  await page.goto("/");
  await page.getByRole("link", { name: "New case" }).click();
  await page.getByLabel("In the customer's own words").fill(words);
  await page.getByLabel("Vehicle").fill("invented hatchback");
  await page.getByRole("button", { name: "Open the case and read it" }).click();
  await page.getByRole("button", { name: /^Take all/ }).click();
  await page.locator("#open-check").waitFor();
  await settled(page);
}

/** Gives one result, now and then a fault seen; false when nothing is left to answer. */
async function answer(page: Page, k: number): Promise<boolean> {
  const results = page.locator("#results");
  if (!(await results.isVisible())) return false;
  const normal = results.getByRole("button", { name: /^All normal/ });
  if (await normal.isVisible()) await normal.tap();
  else
    await results
      .locator(".result-buttons button")
      .nth(k % 3 === 2 ? 0 : 1)
      .tap();
  return true;
}

/** Waits until the worker has nothing more to do for the page. */
async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(50);
  await page.waitForFunction(() => document.querySelector("main [aria-busy=true]") === null);
  await page.waitForTimeout(150);
  await page.waitForFunction(() => document.querySelector("main [aria-busy=true]") === null);
}

async function sampleOf(worker: Worker): Promise<Sample> {
  const measures = await worker.evaluate(() =>
    performance.getEntriesByType("measure").map(({ name, duration }) => ({ name, duration })),
  );
  const sum = (names?: readonly string[]) =>
    measures
      .filter(({ name }) => names?.includes(name) !== false)
      .reduce((total, { duration }) => total + duration, 0);
  return { step: sum(["weigh", "propose"]), all: sum() };
}

async function watchPaints(page: Page): Promise<void> {
  await page.evaluate((durationThreshold) => {
    const seen: number[] = [];
    Object.assign(window, { seenPaints: seen });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as PerformanceEventTiming[]) {
        if (entry.interactionId > 0) seen.push(entry.duration);
      }
    }).observe({ type: "event", durationThreshold } as PerformanceObserverInit);
  }, SHORTEST_SHOWN);
}

/** The longest event of the tap since the last call. */
async function lastPaint(page: Page): Promise<number | undefined> {
  return page.evaluate(() => {
    const { seenPaints } = window as unknown as { seenPaints: number[] };
    const all = seenPaints.splice(0);
    return all.length === 0 ? undefined : Math.max(...all);
  });
}

async function slow(page: CDPSession, rate: number): Promise<void> {
  await page.send("Emulation.setCPUThrottlingRate", { rate });
  page.on("Target.attachedToTarget", ({ sessionId }) => {
    const message = JSON.stringify({ id: 1, method: "Emulation.setCPUThrottlingRate", params: { rate } });
    void page.send("Target.sendMessageToTarget", { sessionId, message }).catch(() => undefined);
  });
  await page.send("Target.setAutoAttach", {
    autoAttach: true,
    waitForDebuggerOnStart: false,
    flatten: false,
  });
}

/** Runs in the page and in the worker: a loop that says how fast the thread is. */
function loopMs(): number {
  const start = performance.now();
  let sum = 0;
  for (let k = 1; k < 2e7; k++) sum += 1 / k;
  return performance.now() - start + (sum > 0 ? 0 : 1);
}

/** The production build on a free port, built when missing or old. */
async function startApp(): Promise<{ url: string; stop: () => void }> {
  const script = join(process.cwd(), "lib", "scripts", "start.mjs");
  const server: ChildProcess = spawn(process.execPath, [script], {
    detached: true,
    stdio: ["ignore", "pipe", "inherit"],
    env: { ...process.env, PORT: "3416" },
  });
  const stop = () => {
    if (server.pid !== undefined) process.kill(-server.pid);
  };
  return new Promise((resolve, reject) => {
    let said = "";
    server.stdout?.on("data", (piece: Buffer) => {
      said += piece.toString();
      const url = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0];
      if (url !== undefined) resolve({ url, stop });
    });
    server.on("exit", () => reject(new Error(`The app did not start: ${said}`)));
  });
}
