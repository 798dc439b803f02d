import type { CaseState } from "../../../lib/case/case-state.ts";
import { forbiddenCheck } from "../../../lib/engine/index.ts";
import type { CompiledCheck, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { nameOfFinding } from "../../text/names.ts";

/** Why a check that was picked by name must not be made, in a sentence; undefined when nothing speaks against it. */
export function whyForbidden(
  knowledge: Knowledge,
  state: CaseState,
  notices: Ranked["notices"],
  check: CompiledCheck,
  place: string | undefined,
): string | undefined {
  const forbidden = forbiddenCheck(knowledge, state.answers, notices, check, place);
  if (forbidden === undefined) return undefined;
  if (forbidden.because === "stop-notice")
    return "A stop notice stands for this car: it must not be driven for a check.";
  return `Not while this stands: ${nameOfFinding(knowledge, forbidden.finding)}. Put that right first.`;
}
