import { isAPIError } from "better-auth/api";
import { cameFrom } from "./address.ts";
import { SESSION_COOKIE } from "./auth.ts";
import { isFromHere, type Principal, principalOf, type Role, ROLES } from "./principal.ts";
import type { Server } from "./server.ts";

/** Who asks, and from where. */
export interface Asker {
  readonly principal: Principal;
  /** At this very machine. */
  readonly here: boolean;
  /** Address of the asker; "" when it is not known. */
  readonly address: string;
}

/** Only what the sessions need: neither address nor browser is kept with them. */
export function cookieHeaders(request: Request): Headers {
  const cookie = request.headers.get("cookie");
  return new Headers(cookie === null ? {} : { cookie });
}

async function sessionOf({ auth }: Server, request: Request) {
  if (!(request.headers.get("cookie") ?? "").includes(SESSION_COOKIE)) return undefined;
  try {
    const found = await auth.api.getSession({
      headers: cookieHeaders(request),
      query: { disableRefresh: true },
    });
    if (found === null) return undefined;
    const { id, name, role, disabled } = found.user;
    if (!ROLES.some((known) => known === role)) return undefined;
    return { id, name, role: role as Role, disabled };
  } catch (error) {
    // The library wraps what its database said.
    throw isAPIError(error) && error.cause !== undefined ? error.cause : error;
  }
}

/** Errors  as the store's. */
export async function identify(server: Server, request: Request): Promise<Asker> {
  const { bound, origin } = server.config;
  const place = {
    bound,
    origin,
    host: request.headers.get("host") ?? "",
    ...cameFrom(request.headers, server.config),
  };
  const session = await sessionOf(server, request);
  const anyAccount = session !== undefined || (await server.hasAccounts());
  return {
    principal: principalOf({ ...place, anyAccount, session }),
    here: isFromHere(place),
    address: place.address,
  };
}
