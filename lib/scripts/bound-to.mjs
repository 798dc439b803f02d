import { BlockList, isIP } from "node:net";
import { networkInterfaces } from "node:os";

const OWN = new BlockList();
OWN.addSubnet("127.0.0.0", 8, "ipv4");
OWN.addAddress("::1", "ipv6");

/**
 * Whether a server that listens there can be reached from this machine only.
 *
 * @param {string} host
 * @returns {"loopback" | "network"}
 */
export function boundTo(host) {
  const version = isIP(host);
  const own = version === 0 ? host === "localhost" : OWN.check(host, version === 4 ? "ipv4" : "ipv6");
  return own ? "loopback" : "network";
}

/**
 * Where a server that listens there is found, this machine's own way first.
 *
 * @param {string} host
 * @param {number} port
 * @returns {string[]}
 */
export function addressesOf(host, port) {
  const everywhere = host === "0.0.0.0" || host === "::";
  const others = Object.values(networkInterfaces())
    .flat()
    .filter((card) => card !== undefined && !card.internal && card.family === "IPv4")
    .map((card) => card?.address ?? "");
  const names = everywhere ? ["127.0.0.1", ...others] : [isIP(host) === 6 ? `[${host}]` : host];
  return names.map((name) => `http://${name}:${port}`);
}
