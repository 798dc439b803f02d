import { beforeEach, expect, test, vi } from "vitest";
import { workerClient } from "../../app/engine/worker-client.ts";
import type { ReleaseName } from "../../app/knowledge/release-index.ts";

/* Which worker answers, and which is stopped, when releases come and go; the texts arrive when the test says so. */

interface Load {
  readonly resolve: (text: string) => void;
  readonly reject: (error: Error) => void;
}

/** Loads of each release, in the order they were asked for. */
const loads = vi.hoisted(() => new Map<string, Load[]>());
vi.mock("../../app/knowledge/release-text.ts", () => ({
  newestRelease: () => Promise.reject(new Error("no network")),
  releaseText: ({ sha256 }: ReleaseName) =>
    new Promise<string>((resolve, reject) => {
      loads.set(sha256, [...(loads.get(sha256) ?? []), { resolve, reject }]);
    }),
}));

const first: ReleaseName = { version: "1.0.0", sha256: "a" };
const second: ReleaseName = { version: "1.1.0", sha256: "b" };

/** Says which release it was loaded with, and the question. */
class Echo {
  loaded = "";
  stopped = false;
  onmessage: ((event: { data: unknown }) => void) | undefined;
  onerror: ((event: { message: string }) => void) | undefined;
  postMessage(data: { kind: string; knowledge?: string; id?: number; ask?: string }): void {
    if (data.kind === "load") this.loaded = data.knowledge ?? "";
    else if (data.ask !== "never answered")
      queueMicrotask(() => this.onmessage?.({ data: { id: data.id, answer: `${this.loaded} ${data.ask}` } }));
  }
  terminate(): void {
    this.stopped = true;
  }
}

let made: Echo[];
let client: ReturnType<typeof workerClient<{ echo: { ask: string; answer: string } }>>;

beforeEach(() => {
  loads.clear();
  made = [];
  client = workerClient({
    make: () => {
      const echo = new Echo();
      made.push(echo);
      return echo as unknown as Worker;
    },
    most: 1,
    replaced: "Replaced.",
  });
});

function arrives(release: ReleaseName, load = 0): void {
  loads.get(release.sha256)?.[load]?.resolve(release.version);
}

function fails(release: ReleaseName, load = 0): void {
  loads.get(release.sha256)?.[load]?.reject(new Error("no text"));
}

test("a release that could not be loaded does not take the worker of a later one along", async () => {
  const lost = client(first, "echo", "one");
  const answered = client(second, "echo", "two");
  arrives(second);
  expect(await answered).toBe("1.1.0 two");
  fails(first);
  await expect(lost).rejects.toThrow("no text");
  expect(await client(second, "echo", "three")).toBe("1.1.0 three");
  expect(made).toHaveLength(1);
});

test("nor that of a second try with the same release", async () => {
  const lost = client(first, "echo", "one");
  const between = client(second, "echo", "two");
  const again = client(first, "echo", "three");
  arrives(first, 1);
  expect(await again).toBe("1.0.0 three");
  fails(first, 0);
  fails(second);
  await expect(lost).rejects.toThrow("no text");
  await expect(between).rejects.toThrow("no text");
  expect(await client(first, "echo", "four")).toBe("1.0.0 four");
  expect(made).toHaveLength(1);
});

test("a load that failed is tried again by the next question", async () => {
  const lost = client(first, "echo", "one");
  fails(first);
  await expect(lost).rejects.toThrow("no text");
  const again = client(first, "echo", "two");
  arrives(first, 1);
  expect(await again).toBe("1.0.0 two");
});

test("one release more than there may be stops the worker asked longest ago, and its question is told so", async () => {
  const waits = client(first, "echo", "never answered");
  arrives(first);
  await vi.waitFor(() => expect(made).toHaveLength(1));
  const answered = client(second, "echo", "two");
  arrives(second);
  await expect(waits).rejects.toThrow("Replaced.");
  expect(await answered).toBe("1.1.0 two");
  expect(made.map((echo) => echo.stopped)).toEqual([true, false]);
});

test("a worker that breaks down tells who waits, and the next question starts another", async () => {
  const waits = client(first, "echo", "never answered");
  arrives(first);
  await vi.waitFor(() => expect(made).toHaveLength(1));
  made[0]?.onerror?.({ message: "out of memory" });
  await expect(waits).rejects.toThrow("out of memory");
  const again = client(first, "echo", "two");
  arrives(first, 1);
  expect(await again).toBe("1.0.0 two");
  expect(made[0]?.stopped).toBe(true);
});
