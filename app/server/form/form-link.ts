import { type Link, openLink, type Store } from "../../../lib/store/index.ts";
import { countFormUse } from "../attempts.ts";
import { linkOver, tokenOf } from "../shared-link.ts";

/** Kind of link that opens the form of one case to its customer. */
export const CUSTOMER_FORM = "customer";

/**
 * The link to a form that a request's token opens; every use counts, photos by themselves as well.
 *
 * Errors  ApiProblem link-over: unknown, expired, revoked or for something else; too-many-tries.
 */
export async function formLink(
  store: Store,
  request: Request,
  now: string,
  use: "form" | "photo" = "form",
): Promise<Link> {
  const token = tokenOf(request);
  const link = token === undefined ? undefined : await openLink(store, token, now);
  if (link?.kind !== CUSTOMER_FORM) throw linkOver();
  await countFormUse(store, link.id, use);
  return link;
}
