// The server process: the framework's handler behind a server of ours, which says where each request really came from.
// The framework alone believes an address that the sender may have made up, and who is asking hangs on it.
import { randomBytes } from "node:crypto";
import { createServer } from "node:http";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { boundTo } from "./bound-to.mjs";
import { startReckoning } from "./reckon-process.mjs";
import { whereFrom } from "./where-from.mjs";

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
/** How long answers under way may take after the signal to stop, in milliseconds. */
const LAST_ANSWERS = 2000;

const host = process.env.HOST || "127.0.0.1";
const port = Number(process.env.PORT || 3000);
const proxies = Number(process.env.CORNERWISE_PROXIES || 0);
if (!Number.isInteger(proxies) || proxies < 0) {
  process.stderr.write("CORNERWISE_PROXIES: give the number of relays of your own before this server.\n");
  process.exit(1);
}

process.chdir(ROOT);
const mark = randomBytes(16).toString("hex");
Object.assign(process.env, {
  NODE_ENV: "production",
  CORNERWISE_BOUND: boundTo(host),
  CORNERWISE_ADDRESS_MARK: mark,
});

// Only now: it reads the environment when it is loaded.
const { default: next } = await import("next");
const app = next({ dev: false, dir: ROOT, hostname: host, port });
const handle = app.getRequestHandler();
await app.prepare();

const server = createServer((request, response) => {
  request.headers["x-cornerwise-address"] = `${mark} ${whereFrom(request, proxies)}`;
  handle(request, response).catch((error) => {
    process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
    response.destroy();
  });
});
server.on("error", (error) => {
  process.stderr.write(`The server cannot listen at ${host}, port ${port}: ${error.message}\n`);
  process.exit(1);
});
server.listen(port, host);
const stopReckoning = startReckoning(ROOT);

for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) {
  process.once(signal, () => {
    stopReckoning();
    server.close(() => process.exit(0));
    // Whoever follows a case would hold the server for ever.
    setTimeout(() => server.closeAllConnections(), LAST_ANSWERS).unref();
  });
}
