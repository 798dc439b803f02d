import { parseFinding } from "../engine/finding-id.ts";
import { capital } from "../engine/names.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Exercise } from "./exercise.ts";

/**
 * What the customer says as a note at the desk: each complaint with what goes with it and what does not.
 *
 * Errors: `unknown-id` for a finding that the knowledge does not hold.
 * @example "Noise: a creak; when cold. Not: when braking."
 */
export function saidWords(knowledge: Knowledge, said: Exercise["said"]): string {
  const sentences: string[] = [];
  const featuresOf = (complaint: string, state: "present" | "absent"): string[] =>
    said.flatMap((s) => {
      const parsed = parseFinding(knowledge, s.finding);
      if (s.state !== state || parsed.kind !== "feature") return [];
      return parsed.complaint?.id === complaint ? [parsed.feature.name] : [];
    });
  for (const { id, name } of knowledge.complaints) {
    const own = said.find((s) => s.finding === id);
    if (own === undefined) continue;
    const title = capital(name);
    if (own.state === "absent") {
      sentences.push(`Not: ${name}.`);
      continue;
    }
    const yes = featuresOf(id, "present");
    const no = featuresOf(id, "absent");
    sentences.push(yes.length === 0 ? `${title}.` : `${title}: ${yes.join("; ")}.`);
    if (no.length > 0) sentences.push(`Not: ${no.join("; ")}.`);
  }
  return sentences.join(" ");
}
