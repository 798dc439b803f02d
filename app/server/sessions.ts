import { isAPIError } from "better-auth/api";
import { accountById } from "../../lib/store/index.ts";
import { countTry, forgetTries } from "./attempts.ts";
import { cookieHeaders } from "./identify.ts";
import { ApiProblem } from "./problem.ts";
import type { Server } from "./server.ts";

/** Every way of failing to sign in looks like this one. */
const wrong = (): ApiProblem =>
  new ApiProblem(
    "wrong-sign-in",
    "No account has this e-mail address and password. Check both and try again.",
  );

/** What the library says of a request, as ours; what its database said, as that. */
function translated(error: unknown): unknown {
  if (!isAPIError(error)) return error;
  return error.statusCode < 500 ? wrong() : (error.cause ?? error);
}

/** Puts the cookies that the library set on our answer. */
export function withCookies(response: Response, from: Headers): Response {
  for (const cookie of from.getSetCookie()) response.headers.append("set-cookie", cookie);
  return response;
}

/**
 * Opens a session; gives its cookies and whose it is.
 *
 * Errors  ApiProblem wrong-sign-in, too-many-tries.
 */
export async function openSession(server: Server, address: string, email: string, password: string) {
  const { auth, store } = server;
  await countTry(store, address, email);
  try {
    const { headers, response } = await auth.api.signInEmail({
      body: { email, password },
      headers: new Headers(),
      returnHeaders: true,
    });
    await forgetTries(store, email);
    const account = await accountById(store, response.user.id);
    if (account === undefined) throw wrong();
    return { headers, account };
  } catch (error) {
    throw translated(error);
  }
}

/** Ends the session of the request, if there is one; gives the cookies that clear it. */
export async function endSession({ auth }: Server, request: Request): Promise<Headers> {
  const { headers } = await auth.api.signOut({ headers: cookieHeaders(request), returnHeaders: true });
  return headers;
}

/** Ends every session of whoever asks. */
export async function endAllSessions(server: Server, request: Request): Promise<Headers> {
  await server.auth.api.revokeSessions({ headers: cookieHeaders(request) });
  return endSession(server, request);
}

/**
 * Changes the password of whoever asks and ends their other sessions; gives the cookies of the one that goes on.
 *
 * Errors  ApiProblem wrong-sign-in, too-many-tries.
 */
export async function changePassword(
  server: Server,
  request: Request,
  address: string,
  accountId: string,
  { current, next }: { readonly current: string; readonly next: string },
): Promise<Headers> {
  const { auth, store } = server;
  const email = (await accountById(store, accountId))?.email ?? "";
  await countTry(store, address, email);
  try {
    const { headers } = await auth.api.changePassword({
      body: { currentPassword: current, newPassword: next, revokeOtherSessions: true },
      headers: cookieHeaders(request),
      returnHeaders: true,
    });
    await forgetTries(store, email);
    return headers;
  } catch (error) {
    throw translated(error);
  }
}

/** The cookies of a session that is in use, prolonged now and then. */
export async function prolonged({ auth }: Server, request: Request): Promise<Headers> {
  const { headers } = await auth.api.getSession({ headers: cookieHeaders(request), returnHeaders: true });
  return headers;
}
