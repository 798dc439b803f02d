import type { Hit } from "./phrases.ts";
import type { Token } from "./tokens.ts";

/**
 * Segment of each token: the stretch that a negation or a hedge reaches over.
 *
 * A new one begins at a mark that parts clauses, at a word that begins a clause ("but"), and at a negator that
 * follows a complaint in texts without marks ("pulls left no noise").
 */
export function segmentsOf(
  tokens: readonly Token[],
  newClauses: readonly Hit[],
  negators: readonly Hit[],
  complaints: readonly Hit[],
): number[] {
  const breaks = new Set(newClauses.map((hit) => hit.first));
  const opens = new Set(negators.map((hit) => hit.first));
  const told = new Set(complaints.flatMap((hit) => hit.at));
  const segments: number[] = [];
  let segment = 0;
  let complaintSeen = false;
  tokens.forEach((token, i) => {
    const parted = i > 0 && token.clause !== tokens[i - 1]?.clause;
    if (i > 0 && (parted || breaks.has(i) || (complaintSeen && opens.has(i)))) {
      segment += 1;
      complaintSeen = false;
    }
    complaintSeen ||= told.has(i);
    segments.push(segment);
  });
  return segments;
}
