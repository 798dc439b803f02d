import { createServer } from "node:net";

const HIGHEST = 65_535;

function isFree(port, host) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(false));
    server.listen({ port, host, exclusive: true }, () => server.close(() => resolve(true)));
  });
}

/** The first free port from `from` on, on that host. */
export async function freePort(from, host) {
  for (let port = from; port <= Math.min(from + 200, HIGHEST); port++) {
    if (await isFree(port, host)) return port;
  }
  throw new Error(`No free port between ${from} and ${from + 200}. Name another with PORT.`);
}
