import { linkById, revokeLink as revoke } from "../../../../../lib/store/index.ts";
import { caseIfThere } from "../../../../server/case-access.ts";
import { ApiProblem } from "../../../../server/problem.ts";
import { CUSTOMER_FORM } from "../../../../server/form/form-link.ts";
import { nothing } from "../../../../server/reply.ts";
import { revokeLink } from "../../../../server/routes/cases.ts";
import { serve } from "../../../../server/serve.ts";
import { READ_CASE } from "../../../../server/shared-link.ts";

const noSuchLink = (): ApiProblem =>
  new ApiProblem("no-such-link", "No link has this id, or it is not one of yours.");

export const DELETE = serve(revokeLink, async ({ server, principal, params, now }) => {
  const { store } = server;
  const link = await linkById(store, params.id);
  if (link?.kind !== READ_CASE && link?.kind !== CUSTOMER_FORM) throw noSuchLink();
  try {
    await caseIfThere(store, principal, "share-case", link.target);
  } catch (error) {
    // Whose case it is stays hidden here as well.
    throw error instanceof ApiProblem && error.code === "no-such-case" ? noSuchLink() : error;
  }
  await revoke(store, params.id, now);
  return nothing();
});
