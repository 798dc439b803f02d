import { z } from "zod";

const Maybe = z
  .string()
  .nullish()
  .transform((at) => at ?? undefined);

/** A link to a case, as the workshop sees it. */
export const LinksReply = z.object({
  links: z.array(
    z.object({
      id: z.string(),
      kind: z.string(),
      madeAt: z.string(),
      expiresAt: z.string(),
      revokedAt: Maybe,
      openedAt: Maybe,
      doneAt: Maybe,
    }),
  ),
});
export type CaseLink = z.infer<typeof LinksReply>["links"][number];

export const MadeLink = z.object({ id: z.string(), token: z.string(), expiresAt: z.string() });
export type MadeLink = z.infer<typeof MadeLink>;

/** What a link opens. */
export const SharedReply = z.object({ version: z.number(), entries: z.array(z.unknown()) });
