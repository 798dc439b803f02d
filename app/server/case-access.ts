import { accountById, accountsOfRole, caseHead, type CaseHead, type Store } from "../../lib/store/index.ts";
import { type Action, reachOf, verdictOn, type Whose } from "./access.ts";
import type { Principal } from "./principal.ts";
import { ApiProblem } from "./problem.ts";
import { forbidden } from "./serve.ts";

const LEARNERS = "trainee";

export const noSuchCase = (): ApiProblem =>
  new ApiProblem("no-such-case", "No case has this id, or it is not one of yours.");

async function whose(store: Store, principal: Principal, ownerId: string | null): Promise<Whose> {
  if (ownerId === null || principal.is !== "account") return "other's";
  if (ownerId === principal.id) return "own";
  // Only for those whose reach depends on it is it worth a look.
  if (principal.role !== "instructor") return "other's";
  return (await accountById(store, ownerId))?.role === LEARNERS ? "trainee's" : "other's";
}

/**
 * The head of a case that the asker may do this with; undefined when there never was one.
 *
 * Errors  ApiProblem no-such-case: it is not theirs to see. forbidden: they may see it, but not this. case-removed.
 */
export async function caseIfThere(
  store: Store,
  principal: Principal,
  action: Action,
  caseId: string,
): Promise<CaseHead | undefined> {
  const head = await caseHead(store, caseId);
  if (head === undefined) return undefined;
  if (head.removedAt !== null) {
    throw new ApiProblem(
      "case-removed",
      "The case was removed for good. What is left of it on a device can go.",
    );
  }
  const verdict = verdictOn(action, principal, await whose(store, principal, head.ownerId));
  if (verdict === "allowed") return head;
  throw verdict === "forbidden" ? forbidden() : noSuchCase();
}

/** As caseIfThere; one that is not there is no-such-case. */
export async function caseFor(
  { server, principal }: { readonly server: { readonly store: Store }; readonly principal: Principal },
  action: Action,
  caseId: string,
): Promise<CaseHead> {
  const head = await caseIfThere(server.store, principal, action, caseId);
  if (head === undefined) throw noSuchCase();
  return head;
}

/** Whose cases the asker's list shows; undefined: everybody's. */
export async function listedOwners(
  store: Store,
  principal: Principal,
): Promise<readonly string[] | undefined> {
  const reach = reachOf("read-cases", principal);
  if (reach === "all") return undefined;
  if (principal.is !== "account" || reach === "none") return [];
  return reach === "own" ? [principal.id] : [principal.id, ...(await accountsOfRole(store, LEARNERS))];
}
