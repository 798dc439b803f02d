import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { freePort } from "../../../lib/scripts/free-port.mjs";

const HOST = "127.0.0.1";
const STARTS_WITHIN = 60_000;

export interface RunningServer {
  readonly origin: string;
  readonly stop: () => Promise<void>;
}

async function started(child: ChildProcess, origin: string, path: string): Promise<RunningServer> {
  const end = (): boolean => child.kill();
  process.once("exit", end);
  const until = Date.now() + STARTS_WITHIN;
  while (child.exitCode === null && Date.now() < until) {
    const answer = await fetch(`${origin}${path}`).catch(() => undefined);
    if (answer?.ok === true) {
      const stop = async (): Promise<void> => {
        process.off("exit", end);
        const gone = new Promise((resolve) => child.once("exit", resolve));
        if (child.exitCode === null && child.kill()) await gone;
      };
      return { origin, stop };
    }
    await sleep(200);
  }
  end();
  throw new Error(`The server at ${origin} did not start; what it said stands above.`);
}

/** The built app by its own server process, on this database. */
export async function startApp(root: string, from: number, database: string): Promise<RunningServer> {
  if (!existsSync(join(root, ".next", "BUILD_ID")))
    throw new Error("The app is not built: run `npm run build` first.");
  const port = await freePort(from, HOST);
  const child = spawn(process.execPath, [join(root, "lib/scripts/serve.mjs")], {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, HOST, PORT: String(port), CORNERWISE_DATABASE: database },
  });
  return started(child, `http://${HOST}:${port}`, "/api/v1/health");
}

const ROUTE = "app/entries/route.js";

/** The least that could take an entry: reads its JSON and says that it has it. Keeps, checks and asks nothing. */
const FILES: Readonly<Record<string, string>> = {
  "package.json": `{ "private": true, "type": "module" }`,
  "next.config.mjs": "export default { poweredByHeader: false };",
  "app/layout.js": "export default ({ children }) => <html><body>{children}</body></html>;",
  // Without one of its own, the framework takes the one of the folder above.
  "instrumentation.js": "export const register = () => undefined;",
  [ROUTE]: `export const dynamic = "force-dynamic";
export const GET = () => Response.json({});
export async function POST(request) {
  const { entries } = await request.json();
  return Response.json({ version: entries.length, added: entries.map(({ id }) => id), known: [] });
}
`,
};

/** A bare route of the same framework, built when it is not there yet. It lies where it finds the app's own packages. */
export async function startBareRoute(root: string, from: number): Promise<RunningServer> {
  const folder = join(root, "reports", "bare-route");
  const framework = join(root, "node_modules/next/dist/bin/next");
  const env = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };
  if (!existsSync(join(folder, ".next", "BUILD_ID"))) {
    for (const [path, text] of Object.entries(FILES)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    const built = spawnSync(process.execPath, [framework, "build"], { cwd: folder, env, encoding: "utf8" });
    if (built.status !== 0)
      throw new Error(`The bare route could not be built:\n${built.stdout}${built.stderr}`);
  }
  const port = await freePort(from, HOST);
  const child = spawn(process.execPath, [framework, "start", "-H", HOST, "-p", String(port)], {
    cwd: folder,
    stdio: ["ignore", "ignore", "inherit"],
    env,
  });
  return started(child, `http://${HOST}:${port}`, "/entries");
}
