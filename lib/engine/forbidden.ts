import type { CompiledCheck, Knowledge } from "../knowledge/schema/compiled.ts";
import type { Answer } from "./answers.ts";
import { parseFinding } from "./finding-id.ts";
import { indexPlaces } from "./place-index.ts";
import type { StopNotice } from "./stop-notices.ts";

/** Why a check must not be made as things stand. */
export type Forbidden =
  /** It drives the car, and a stop notice stands. */
  | { readonly because: "stop-notice" }
  /** A finding that is present at an overlapping place forbids it. */
  | { readonly because: "finding"; readonly finding: string };

/** What forbids a check at a place now; undefined when nothing speaks against it. An open place meets every other. */
export function forbiddenCheck(
  knowledge: Knowledge,
  answers: readonly Answer[],
  notices: readonly StopNotice[],
  check: CompiledCheck,
  place: string | undefined,
): Forbidden | undefined {
  if (check.does.includes("drives") && notices.length > 0) return { because: "stop-notice" };
  if (check.notWhen.length === 0) return undefined;
  const places = indexPlaces(knowledge);
  const against = answers.find((answer) => {
    if (answer.state !== "present") return false;
    const finding = parseFinding(knowledge, answer.finding);
    if (finding.kind !== "observation" || !check.notWhen.includes(finding.observation.id)) return false;
    return finding.place === undefined || place === undefined || places.overlap(finding.place, place);
  });
  return against === undefined ? undefined : { because: "finding", finding: against.finding };
}
