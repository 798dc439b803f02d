import { describe, expect, it } from "vitest";
import { cameFrom } from "../../app/server/address.ts";
import { type Facts, isFromHere, principalOf } from "../../app/server/principal.ts";
import { isLoopbackAddress, isLoopbackHost } from "../../app/server/loopback.ts";

const here: Facts = {
  bound: "loopback",
  origin: undefined,
  host: "127.0.0.1:3000",
  address: "127.0.0.1",
  relayed: false,
  anyAccount: false,
  session: undefined,
};
const ana = { id: "a1", name: "Ana", role: "technician", disabled: false } as const;

describe("who is asking", () => {
  it("is the one person at this machine while nobody has an account", () => {
    expect(principalOf(here)).toEqual({ is: "local" });
    expect(principalOf({ ...here, host: "localhost:3000", address: "::ffff:127.0.0.1" })).toEqual({
      is: "local",
    });
    expect(principalOf({ ...here, host: "[::1]:3000", address: "::1" })).toEqual({ is: "local" });
  });

  it.each<[string, Partial<Facts>]>([
    ["an account exists", { anyAccount: true }],
    ["the server is bound to the network", { bound: "network" }],
    ["a page elsewhere had its name lead here", { host: "evil.example:3000" }],
    ["the name only begins like this machine's", { host: "localhost.evil.example" }],
    ["there is no Host", { host: "" }],
    ["the address is another machine's", { address: "192.168.1.20" }],
    ["a relay says that it passes the request on", { relayed: true }],
    ["a public origin is set", { origin: "https://desk.example" }],
  ])("is nobody when %s", (_when, over) => {
    expect(principalOf({ ...here, ...over })).toEqual({ is: "nobody" });
  });

  it("is the account of the session, wherever it comes from, unless it was disabled", () => {
    const far: Facts = { ...here, bound: "network", address: "10.0.0.9", anyAccount: true, session: ana };
    expect(principalOf(far)).toEqual({ is: "account", id: "a1", name: "Ana", role: "technician" });
    expect(principalOf({ ...far, session: { ...ana, disabled: true } })).toEqual({ is: "nobody" });
  });
});

// Source: RFC 6890 lists 127.0.0.0/8 and ::1/128 as loopback.
describe("this machine's own addresses and names", () => {
  it.each(["127.0.0.1", "127.255.255.254", "::1", "::ffff:127.0.0.1"])("%s is one", (address) => {
    expect(isLoopbackAddress(address)).toBe(true);
  });
  it.each([
    "128.0.0.1",
    "10.0.0.1",
    "192.168.0.1",
    "::2",
    "::ffff:10.0.0.1",
    "127.0.0.1.evil",
    "",
    "1127.0.0.1",
  ])("%s is none", (address) => {
    expect(isLoopbackAddress(address)).toBe(false);
  });
  it.each(["localhost", "LOCALHOST:3000", "127.0.0.1:80", "[::1]:3000"])("%s names this machine", (host) => {
    expect(isLoopbackHost(host)).toBe(true);
  });
  it.each([
    "localhost@evil.example",
    "127.0.0.1.evil.example",
    "evil.example",
    "",
    "[::1].evil",
    "localhost:x",
  ])("%s does not", (host) => {
    expect(isLoopbackHost(host)).toBe(false);
  });
});

describe("where a request came from", () => {
  const of = (headers: Record<string, string>, addressMark?: string) =>
    cameFrom(new Headers(headers), { addressMark });

  it("is what our own server process wrote, and nothing that a sender can write", () => {
    expect(of({ "x-cornerwise-address": "m4rk 10.0.0.7 direct" }, "m4rk")).toEqual({
      address: "10.0.0.7",
      relayed: false,
    });
    for (const headers of [
      { "x-forwarded-for": "127.0.0.1" },
      { "x-cornerwise-address": "guess 127.0.0.1 direct" },
      { "x-cornerwise-address": "" },
    ]) {
      expect(of(headers, "m4rk")).toEqual({ address: "", relayed: true });
    }
  });

  it("without that process, is what the framework took from the socket", () => {
    expect(of({ host: "h", "x-forwarded-host": "h", "x-forwarded-for": "::1" })).toEqual({
      address: "::1",
      relayed: false,
    });
  });

  it.each<Record<string, string>>([
    { "x-forwarded-for": "127.0.0.1, 10.0.0.2" },
    { forwarded: "for=10.0.0.2" },
    { via: "1.1 relay" },
    { "x-real-ip": "10.0.0.2" },
    { host: "127.0.0.1:3000", "x-forwarded-host": "desk.example" },
  ])("is passed on when the headers say so: %o", (headers) => {
    expect(of(headers).relayed).toBe(true);
    expect(isFromHere({ ...here, ...of(headers) })).toBe(false);
  });
});
