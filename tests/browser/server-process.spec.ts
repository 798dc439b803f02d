import { expect, test } from "@playwright/test";
import { note, opening } from "../support/made-entries.ts";
import { ownServer, type OwnServer } from "./own-server.ts";

const servers: OwnServer[] = [];
async function start(options: Parameters<typeof ownServer>[0] = {}): Promise<OwnServer> {
  const server = await ownServer(options);
  servers.push(server);
  return server;
}
test.afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => server.stop("SIGKILL")));
});

const post = (
  url: string,
  path: string,
  body: unknown,
  headers: Record<string, string> = {},
): Promise<Response> =>
  fetch(`${url}/api/v1${path}`, {
    method: "POST",
    body: JSON.stringify(body),
    headers: { "content-type": "application/json", origin: url, ...headers },
  });

test("on the loopback address it just works, but not for what a relay passes on", async () => {
  const { url, said } = await start();
  expect((await fetch(`${url}/api/v1/cases`)).status).toBe(200);
  for (const headers of [{ "x-forwarded-for": "203.0.113.9" }, { forwarded: "for=203.0.113.9" }]) {
    expect((await fetch(`${url}/api/v1/cases`, { headers })).status).toBe(503);
  }
  expect(said()).not.toContain("Set-up code");
});

test("on the network it serves no data before the owner is made with the code on its console", async () => {
  const { url, said } = await start({ host: "0.0.0.0" });
  for (const headers of [
    {},
    { "x-forwarded-for": "127.0.0.1" },
    { "x-cornerwise-address": "x 127.0.0.1 direct" },
  ]) {
    expect((await fetch(`${url}/api/v1/cases`, { headers })).status).toBe(503);
  }
  const [, setUpCode] = /Set-up code[^:]*: ([A-Z2-7-]{39})/.exec(said()) ?? [];
  const owner = { name: "Olga", email: "olga@harbour-lane.example", password: "correct horse battery" };
  expect((await post(url, "/first-account", owner)).status).toBe(403);
  const made = await post(url, "/first-account", { ...owner, setUpCode });
  expect(made.status).toBe(201);
  const cookie = made.headers.get("set-cookie")?.split(";")[0] ?? "";
  expect((await fetch(`${url}/api/v1/cases`, { headers: { cookie } })).status).toBe(200);
  expect((await fetch(`${url}/api/v1/cases`)).status).toBe(401);
});

test("two instances on one database tell each other's entries to who follows the case", async () => {
  const one = await start();
  const two = await start({ CORNERWISE_DATABASE: one.database });
  expect((await post(one.url, "/cases/c1/entries", { entries: [opening("c1")] })).status).toBe(200);
  const following = await fetch(`${one.url}/api/v1/cases/c1/events`);
  const reader = following.body?.pipeThrough(new TextDecoderStream()).getReader();
  let told = "";
  const until = async (text: string): Promise<void> => {
    while (!told.includes(text)) told += (await reader?.read())?.value ?? "";
  };
  await until("data: 1\n");
  const sent = await post(two.url, "/cases/c1/entries", { entries: [note("c1", "n")] });
  expect(sent.status).toBe(200);
  await until("data: 2\n");
  // Whoever still follows does not hold the server back when it is to stop.
  expect(await one.stop()).toBe(0);
});

test("a setting that cannot be used is told on the console, and pages are served all the same", async () => {
  const { url, said } = await start({ CORNERWISE_ORIGIN: "desk" });
  expect((await fetch(`${url}/api/v1/cases`)).status).toBe(503);
  expect((await fetch(url)).status).toBe(200);
  expect(said()).toContain('CORNERWISE_ORIGIN is "desk"');
});
