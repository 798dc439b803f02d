import { z } from "zod";

const Count = z.number().int().min(0);

/** Answer to entries that were sent. */
export const SentReply = z.object({
  version: Count,
  added: z.array(z.string()),
  known: z.array(z.string()),
});

/** Entries of a case after a number; each entry is looked at by itself. */
export const PulledReply = z.object({
  version: Count,
  entries: z.array(z.object({ seq: z.number().int().min(1), entry: z.unknown() })),
});
export type PulledReply = z.infer<typeof PulledReply>;

/** Head of a case, as lists show it. */
export const CaseHead = z.object({
  id: z.string(),
  version: Count,
  openedAt: z.string(),
  changedAt: z.string(),
  customer: z.string(),
  vehicle: z.string(),
  plate: z.string().nullish(),
  invented: z.boolean(),
  closed: z.boolean(),
  ownerId: z.string().nullish(),
  assigned: z.object({ name: z.string(), account: z.string().nullish() }).nullish(),
  urgency: z
    .object({
      is: z.enum(["level", "nothing-told", "unknown"]),
      level: z.string().nullish(),
      current: z.boolean(),
      problem: z.string().nullish(),
    })
    .optional(),
});
export type CaseHead = z.infer<typeof CaseHead>;

/** Who a case can be given to. */
export const PeopleReply = z.object({
  people: z.array(z.object({ id: z.string(), name: z.string(), role: z.string() })),
});
export type Colleague = z.infer<typeof PeopleReply>["people"][number];

export const CasesReply = z.object({ cases: z.array(CaseHead), next: z.string().nullish() });

/** Who is asking, as the server sees it. */
export const MeReply = z.object({
  person: z
    .object({ id: z.string(), name: z.string(), role: z.string() })
    .nullish()
    .transform((person) => person ?? undefined),
  local: z.boolean(),
  ownerNeeded: z.boolean(),
  /** Which database the server works on. */
  history: z.string().optional(),
});
export type MeReply = z.infer<typeof MeReply>;
