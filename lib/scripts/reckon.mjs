// Beside the server process: reckons how urgent the open cases are. Started by serve.mjs, and ends with it.
import { constants, setPriority } from "node:os";
import { reckonBeside } from "../dist/cli/reckon-beside.js";

const stop = new AbortController();
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, () => stop.abort());
// The server ended, however it did.
process.once("disconnect", () => stop.abort());
// Whoever waits for an answer comes first.
setPriority(constants.priority.PRIORITY_LOW);

await reckonBeside({
  database: process.env.CORNERWISE_DATABASE || "data/cornerwise.db",
  signal: stop.signal,
  say: (text) => process.stderr.write(`${text}\n`),
});
process.exit(0);
