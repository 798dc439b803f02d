import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { hashedUniform } from "../../lib/maths/hashed-uniform.ts";

/**
 * What happened lately to a car with the fault, drawn by how many cars it happens to and by the fault's odds after it:
 * s o / (s o + 1 - s), by Bayes' rule where the fault is rare. Each by itself, as the knowledge weighs them.
 */
export function happenedWith(knowledge: Knowledge, fault: string, seed: number): string[] {
  const factors = knowledge.faults.find((f) => f.id === fault)?.contexts ?? {};
  return knowledge.contexts
    .filter(({ id, share }) => {
      const weight = share * (factors[id] ?? 1);
      return hashedUniform(seed, `lately ${id}`) < weight / (weight + 1 - share);
    })
    .map(({ id }) => id);
}
