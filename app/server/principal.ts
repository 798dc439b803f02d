import type { CameFrom } from "./address.ts";
import type { Config } from "./config.ts";
import { isLoopbackAddress, isLoopbackHost } from "./loopback.ts";

export const ROLES = ["owner", "advisor", "technician", "instructor", "trainee"] as const;
export type Role = (typeof ROLES)[number];

/** Who is asking. */
export type Principal =
  /** At this very machine, and nobody has made an account: one person, everything. */
  | { readonly is: "local" }
  | { readonly is: "account"; readonly id: string; readonly name: string; readonly role: Role }
  /** Holds a link: sees the one thing that it opens. */
  | { readonly is: "link"; readonly kind: string; readonly target: string }
  | { readonly is: "nobody" };

export interface Facts extends CameFrom {
  readonly bound: Config["bound"];
  /** Public origin, when one is set. */
  readonly origin: string | undefined;
  /** The Host header; "" when there is none. */
  readonly host: string;
  readonly anyAccount: boolean;
  /** The account that the session belongs to, when there is a good one. */
  readonly session:
    | { readonly id: string; readonly name: string; readonly role: Role; readonly disabled: boolean }
    | undefined;
}

/** Whether a request comes from this machine and nothing lies between. */
export function isFromHere(facts: Omit<Facts, "anyAccount" | "session">): boolean {
  const { bound, origin, host, address, relayed } = facts;
  if (bound !== "loopback" || relayed) return false;
  // A public name means that something passes requests on to us.
  if (origin !== undefined && !isLoopbackHost(new URL(origin).host)) return false;
  return isLoopbackHost(host) && (address === "" || isLoopbackAddress(address));
}

/** Who is asking, from what is known of the request. */
export function principalOf(facts: Facts): Principal {
  const { session, anyAccount } = facts;
  if (session !== undefined && !session.disabled) {
    return { is: "account", id: session.id, name: session.name, role: session.role };
  }
  return !anyAccount && isFromHere(facts) ? { is: "local" } : { is: "nobody" };
}
