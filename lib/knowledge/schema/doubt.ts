import { z } from "zod";
import { Basis, Paragraph, Probability } from "./common.ts";

const Spread = z.strictObject({
  /** Standard deviation in log-odds. */
  spread: z.number().positive().max(3),
  why: Paragraph,
  basis: Basis,
});

/** `doubt.json`: how far the knowledge itself may be wrong, how often answers are, and from when on either is worth a word. */
export const Doubt = z.strictObject({
  about: Paragraph,
  /** Of what has no frequency word: strengths bring the spread of their word (`scale.json`). */
  spreads: z.strictObject({ priors: Spread, leaks: Spread }),
  /** Chance that an answer is the wrong way round, before anything speaks against it. */
  misread: z.strictObject({ check: Probability, report: Probability, why: Paragraph, basis: Basis }),
  /** An answer is named for a second look from this many bits of surprise on. */
  lookAgain: z.strictObject({
    bits: z.number().positive(),
    /** Share of cases without a wrong answer in which one is named all the same; `bits` follows from it. */
    falseAlarms: Probability,
    why: Paragraph,
    basis: Basis,
  }),
  /** A ranking is steady when its leader leads in at least this share of the draws. */
  steadyFrom: Probability,
  /** Nothing here explains the complaint when causes outside the knowledge are at least this likely. */
  unexplainedFrom: Probability,
});
export type Doubt = z.infer<typeof Doubt>;
