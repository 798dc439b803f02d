import type { CaseState } from "../../../lib/case/case-state.ts";
import type { CompiledCheck, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { nameOfFinding } from "../../text/names.ts";

/**
 * Why a check must not be made as things stand, in a sentence; undefined when nothing speaks against it.
 *
 * The engine never proposes such a check; one that was picked by name gets here.
 */
export function whyForbidden(
  knowledge: Knowledge,
  state: CaseState,
  notices: Ranked["notices"],
  check: CompiledCheck,
  place: string | undefined,
): string | undefined {
  if (check.does.includes("drives") && notices.length > 0)
    return "A stop notice stands for this car: it must not be driven for a check.";
  const against = state.answers.find((answer) => {
    const [id = "", at] = answer.finding.split("@");
    return answer.state === "present" && check.notWhen.includes(id) && meets(knowledge, at, place);
  });
  if (against === undefined) return undefined;
  return `Not while this stands: ${nameOfFinding(knowledge, against.finding)}. Put that right first.`;
}

/** Whether two places share a part of the car; a place that is not known meets every other. */
function meets(knowledge: Knowledge, a: string | undefined, b: string | undefined): boolean {
  if (a === undefined || b === undefined || a === b) return true;
  const within = (id: string) => knowledge.places.places.find((p) => p.id === id)?.within ?? [];
  return within(a).includes(b) || within(b).includes(a);
}
