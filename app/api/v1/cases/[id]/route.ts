import { removeCase as remove } from "../../../../../lib/store/index.ts";
import { caseFor } from "../../../../server/case-access.ts";
import { ApiProblem } from "../../../../server/problem.ts";
import { headJson, isKnown, json, matchVersions, nothing, unchanged } from "../../../../server/reply.ts";
import { readCase, removeCase } from "../../../../server/routes/cases.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readCase, async (asked) => {
  const head = await caseFor(asked, "read-cases", asked.params.id);
  return isKnown(asked.request, head.version) ? unchanged(head.version) : json(headJson(head), head.version);
});

export const DELETE = serve(removeCase, async (asked) => {
  const { server, params, request, now } = asked;
  const { version } = await caseFor(asked, "remove-case", params.id);
  const versions = matchVersions(request.headers.get("if-match") ?? "");
  if (versions !== undefined && !versions.includes(version)) {
    throw new ApiProblem(
      "changed-meanwhile",
      "The case has grown meanwhile. Look at it again before it goes.",
    );
  }
  await remove(server.store, params.id, now);
  server.watch.removed(params.id);
  return nothing();
});
