import { randomUUID } from "node:crypto";
import { listLinks as keptLinks, makeLink as keepLink } from "../../../../../../lib/store/index.ts";
import { caseFor } from "../../../../../server/case-access.ts";
import { json } from "../../../../../server/reply.ts";
import { listLinks, makeLink } from "../../../../../server/routes/cases.ts";
import { serve } from "../../../../../server/serve.ts";
import { newToken } from "../../../../../server/shared-link.ts";

const DAY_MS = 86_400_000;

export const GET = serve(listLinks, async (asked) => {
  await caseFor(asked, "share-case", asked.params.id);
  const links = await keptLinks(asked.server.store, asked.params.id);
  return json({ links: links.map(({ target: _, ...link }) => link) });
});

export const POST = serve(makeLink, async (asked) => {
  const { server, principal, params, body, now } = asked;
  await caseFor(asked, "share-case", params.id);
  const id = randomUUID();
  const token = newToken();
  const expiresAt = new Date(Date.parse(now) + body.days * DAY_MS).toISOString();
  await keepLink(server.store, {
    id,
    token,
    kind: body.kind,
    target: params.id,
    madeBy: principal.is === "account" ? principal.id : null,
    madeAt: now,
    expiresAt,
    ...(body.kind === "customer" && body.words !== undefined && body.words !== "" && { words: body.words }),
  });
  return json({ id, token, expiresAt }, undefined, { status: 201 });
});
