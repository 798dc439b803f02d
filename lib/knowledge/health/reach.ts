import { z } from "zod";
import { CornerwiseError } from "../../errors.ts";
import { Id } from "../schema/common.ts";

/** `measured/reach.json`: how often simulated cases that start from a fault end at the right part. */
const Reach = z.object({
  about: z.string(),
  /** Version of the knowledge that was measured. */
  knowledge: z.string(),
  seeds: z.number().int().positive(),
  faults: z.array(
    z.object({
      fault: Id,
      cars: z.number().int().positive(),
      right: z.number().int().min(0),
      /** Mean minutes to the verdict. */
      minutes: z.number().min(0),
    }),
  ),
});
export type Reach = z.infer<typeof Reach>;

/** A fault as it was reached. */
export interface ReachedFault {
  readonly fault: string;
  readonly cars: number;
  readonly right: number;
  readonly share: number;
  readonly minutes: number;
}

/**
 * Read the measurement of reach.
 *
 * Errors  "not-readable" when it is not JSON, "bad-record" when its form is wrong.
 */
export function readReach(text: string): Reach {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (cause) {
    throw new CornerwiseError(
      "not-readable",
      "measured/reach.json is not JSON. Measure again.",
      {},
      { cause },
    );
  }
  const result = Reach.safeParse(json);
  if (result.success) return result.data;
  const issues = result.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
  throw new CornerwiseError("bad-record", `measured/reach.json: ${issues.join("; ")}. Measure again.`);
}

/** Faults that were reached in less than the share of their cases, worst first; ties by more minutes, then by id. */
export function weakestFaults(reach: Reach, below: number): ReachedFault[] {
  return reach.faults
    .map(({ fault, cars, right, minutes }) => ({ fault, cars, right, share: right / cars, minutes }))
    .filter(({ share }) => share < below)
    .sort((a, b) => a.share - b.share || b.minutes - a.minutes || (a.fault < b.fault ? -1 : 1));
}
