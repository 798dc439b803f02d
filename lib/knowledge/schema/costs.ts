import { z } from "zod";
import { Basis, Id, Line, Paragraph, Probability } from "./common.ts";

const Minutes = z.number().min(0).max(10_000);

/** `costs.json`: what repairing, checking on and referring cost, and when to stop. Every figure is a default that a user may override. */
export const Costs = z.strictObject({
  /** Says that the figures are invented. */
  about: Paragraph,
  /** ISO 4217 code. */
  currency: z.string().regex(/^[A-Z]{3}$/, "use the three letters of ISO 4217"),
  /** Money an hour of work. */
  hourlyRate: z.number().positive(),
  /** What a part costs, in steps. */
  bands: z.record(Id, z.strictObject({ name: Line, price: z.number().min(0) })),
  /** Band by what is wrong: what is loose or out of setting needs no part. Goes before the others. */
  byKind: z.record(Id, Id).default({}),
  byPart: z.record(Id, Id).default({}),
  /** Band by the group of the part. */
  byGroup: z.record(Id, Id).default({}),
  /** Band of a part that nothing above names. */
  otherwise: Id,
  /** Minutes to see after a repair whether the complaint is gone. */
  verifyMinutes: Minutes,
  /** What a repair costs on top when the part was not at fault. */
  wrongPart: z.strictObject({ minutes: Minutes }),
  /** A repair that did not cure: chance that the car leaves all the same, and what its coming back costs. */
  comeback: z.strictObject({ chance: z.number().min(0).max(1), minutes: Minutes }),
  /** Handing the car over to somebody who finds it by other means. */
  refer: z.strictObject({ minutes: Minutes, fee: z.number().min(0) }),
  stop: z.strictObject({
    /** A check is worth it when it saves more than this many times its own cost. */
    margin: z.number().positive().max(2),
    /** "Repair now" is said from this chance on. */
    floor: Probability,
    /** A fault of these severities that is likelier than `doubt` keeps the search open until it reaches the floor or falls. */
    safety: z.array(z.enum(["minor", "major", "dangerous"])),
    doubt: Probability,
  }),
  basis: Basis,
});
export type Costs = z.infer<typeof Costs>;
