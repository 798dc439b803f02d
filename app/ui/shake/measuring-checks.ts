import type { CompiledCheck, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";

/** Checks that measure a shake on the road: those that drive the car and settle a finding of the orders. */
export function measuringChecks(knowledge: Knowledge): readonly CompiledCheck[] {
  const found = new Set(knowledge.orders.findings.map(({ observation }) => observation));
  return knowledge.checks.filter(
    ({ does, settles }) => does.includes("drives") && settles.some((id) => found.has(id)),
  );
}

/** What they ask to be read before the drive; where there are none, whatever is said of driving. */
export function measuringCautions(knowledge: Knowledge): readonly string[] {
  const ids = new Set(measuringChecks(knowledge).flatMap(({ cautions }) => cautions));
  return knowledge.cautions
    .filter(({ id, covers }) => (ids.size > 0 ? ids.has(id) : covers.includes("drives")))
    .map(({ text }) => text);
}
