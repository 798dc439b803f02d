import {
  type Attempt,
  attemptById,
  type HandOut,
  handOutById,
  hashOfToken,
  type Store,
} from "../../../lib/store/index.ts";
import type { Principal } from "../principal.ts";
import { ApiProblem } from "../problem.ts";
import { tokenOf } from "../shared-link.ts";
import { seesBoardOf } from "./exercise-access.ts";

/** The hash of the key that a browser sent; undefined when it sent none. */
export function keyHash(request: Request): string | undefined {
  const key = tokenOf(request);
  return key === undefined ? undefined : hashOfToken(key);
}

const noSuchAttempt = (): ApiProblem =>
  new ApiProblem("no-such-attempt", "No attempt has this id, or it is not one of yours.");

interface Asking {
  readonly server: { readonly store: Store };
  readonly principal: Principal;
  readonly request: Request;
}

/** Whether the attempt is the asker's: by the account, by the browser's key, or nobody else is there. */
export function isOwn({ principal, request }: Asking, attempt: Attempt): boolean {
  if (principal.is === "local") return true;
  if (attempt.traineeId !== null) return principal.is === "account" && principal.id === attempt.traineeId;
  return attempt.tokenHash !== null && attempt.tokenHash === keyHash(request);
}

/** An attempt with what was handed out for it. */
export interface Handed {
  readonly attempt: Attempt;
  readonly handOut: HandOut;
}

async function handed(store: Store, id: string): Promise<Handed> {
  const attempt = await attemptById(store, id);
  const handOut = attempt && (await handOutById(store, attempt.handOutId));
  if (attempt === undefined || handOut === undefined) throw noSuchAttempt();
  return { attempt, handOut };
}

/** An attempt that the asker works on. Errors  ApiProblem no-such-attempt. */
export async function attemptToWork(asking: Asking, id: string): Promise<Handed> {
  const found = await handed(asking.server.store, id);
  if (!isOwn(asking, found.attempt)) throw noSuchAttempt();
  return found;
}

/** An attempt that the asker may look at: an own one, or one at an own exercise. Errors  ApiProblem no-such-attempt. */
export async function attemptToSee(
  asking: Asking,
  id: string,
): Promise<Handed & { readonly staff: boolean }> {
  const found = await handed(asking.server.store, id);
  const staff = await seesBoardOf(asking.server.store, asking.principal, found.attempt.exerciseId);
  if (!staff && !isOwn(asking, found.attempt)) throw noSuchAttempt();
  return { ...found, staff };
}
