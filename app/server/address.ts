import type { Config } from "./config.ts";

/** Header in which our server process writes where a request came from, after its mark. */
export const ADDRESS_HEADER = "x-cornerwise-address";

/** Headers by which a relay says that it passes on somebody else's request. */
const RELAYED = ["forwarded", "via", "x-real-ip"] as const;

export interface CameFrom {
  /** Address of the asker; "" when it is not known. */
  readonly address: string;
  /** Whether the request says that somebody passed it on: then it is not from this machine, whatever its address. */
  readonly relayed: boolean;
}

/**
 * Where a request came from.
 *
 * Under our own server process its header counts alone: `x-forwarded-for` can be sent by anybody.
 */
export function cameFrom(headers: Headers, { addressMark }: Pick<Config, "addressMark">): CameFrom {
  if (addressMark !== undefined) {
    const [mark, address = "", relayed] = (headers.get(ADDRESS_HEADER) ?? "").split(" ");
    return mark === addressMark ? { address, relayed: relayed !== "direct" } : { address: "", relayed: true };
  }
  // The framework fills these two from the socket and the Host header when they are not there.
  const passedOn = headers.get("x-forwarded-for") ?? "";
  const host = headers.get("x-forwarded-host");
  return {
    address: passedOn.split(",")[0]?.trim() ?? "",
    relayed:
      passedOn.includes(",") ||
      (host !== null && host !== headers.get("host")) ||
      RELAYED.some((name) => headers.has(name)),
  };
}
