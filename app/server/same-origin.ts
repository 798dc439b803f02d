/**
 * Whether a write comes from our own pages.
 *
 * The Origin header decides; without one, only the browser's own word that the request is of the same origin. With no public
 * origin set, the host that the request was sent to is ours.
 * Source  OWASP cross-site request forgery prevention cheat sheet: verifying origin with standard headers, fetch metadata.
 */
export function isSameOrigin(headers: Headers, ownOrigin: string | undefined): boolean {
  const origin = headers.get("origin");
  if (origin === null) return headers.get("sec-fetch-site") === "same-origin";
  if (!URL.canParse(origin)) return false;
  const from = new URL(origin);
  if (ownOrigin !== undefined && from.origin === ownOrigin) return true;
  return (
    ownOrigin === undefined && from.host !== "" && from.host === hostOf(headers.get("host"), from.protocol)
  );
}

/** The Host header as a URL writes it: without the port that its scheme has anyway. */
function hostOf(host: string | null, protocol: string): string | undefined {
  const url = `${protocol}//${host ?? ""}`;
  return host !== null && URL.canParse(url) ? new URL(url).host : undefined;
}
