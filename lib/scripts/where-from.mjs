/** Headers by which a relay says that it passes on somebody else's request. */
const RELAYED = ["forwarded", "via", "x-forwarded-for", "x-forwarded-host", "x-real-ip"];

/**
 * Where a request came from, as the app reads it: address, and whether somebody passed it on.
 *
 * The socket decides. Behind `proxies` relays of one's own, the address that the outermost of them saw: each adds one to
 * the end of x-forwarded-for, and what stands further left can be sent by anybody.
 *
 * @param {{ readonly headers: Readonly<Record<string, string | string[] | undefined>>, readonly socket: { readonly remoteAddress?: string } }} request
 * @param {number} proxies
 */
export function whereFrom({ headers, socket }, proxies) {
  const passedOn = String(headers["x-forwarded-for"] ?? "")
    .split(",")
    .map((address) => address.trim())
    .filter((address) => /^[0-9a-f.:]{2,45}$/i.test(address));
  const seen = [socket.remoteAddress ?? "", ...passedOn.reverse()];
  const address = seen[Math.min(proxies, seen.length - 1)] ?? "";
  const relayed = proxies > 0 || RELAYED.some((name) => headers[name] !== undefined);
  return `${address} ${relayed ? "relayed" : "direct"}`;
}
