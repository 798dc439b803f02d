import { describe, expect, it } from "vitest";
import { addressesOf, boundTo } from "../../lib/scripts/bound-to.mjs";
import { whereFrom } from "../../lib/scripts/where-from.mjs";

// Source: RFC 6890 (loopback ranges); 0.0.0.0 and :: stand for every address of the machine (RFC 4291, 2.5.2; RFC 1122, 3.2.1.3).
describe("where the server listens", () => {
  it.each(["127.0.0.1", "127.1.2.3", "::1", "localhost"])(
    "%s can be reached from this machine only",
    (host) => {
      expect(boundTo(host)).toBe("loopback");
    },
  );
  it.each(["0.0.0.0", "::", "192.168.1.10", "desk.example", "localhost.example", "", "128.0.0.1"])(
    "%s can be reached from the network",
    (host) => {
      expect(boundTo(host)).toBe("network");
    },
  );
  it("is told as addresses, this machine's own first", () => {
    expect(addressesOf("0.0.0.0", 3000)[0]).toBe("http://127.0.0.1:3000");
    expect(addressesOf("::1", 80)).toEqual(["http://[::1]:80"]);
    expect(addressesOf("desk.example", 80)).toEqual(["http://desk.example:80"]);
  });
});

describe("where a request came from", () => {
  const from = (headers: Record<string, string>, proxies = 0, remoteAddress = "10.0.0.2") =>
    whereFrom({ headers, socket: { remoteAddress } }, proxies);

  it("is the socket, whatever the sender writes", () => {
    expect(from({})).toBe("10.0.0.2 direct");
    expect(from({ "x-forwarded-for": "127.0.0.1" })).toBe("10.0.0.2 relayed");
    expect(from({ forwarded: "for=127.0.0.1" })).toBe("10.0.0.2 relayed");
  });

  it("is what the outermost relay of one's own saw", () => {
    expect(from({ "x-forwarded-for": "127.0.0.1, 203.0.113.9" }, 1)).toBe("203.0.113.9 relayed");
    expect(from({ "x-forwarded-for": "127.0.0.1, 203.0.113.9, 10.0.0.3" }, 2)).toBe("203.0.113.9 relayed");
    expect(from({}, 1)).toBe("10.0.0.2 relayed");
  });

  it("takes nothing from the header that is no address", () => {
    expect(from({ "x-forwarded-for": "127.0.0.1 direct" }, 1)).toBe("10.0.0.2 relayed");
  });
});
