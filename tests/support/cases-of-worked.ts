import type { Entry } from "../../lib/case/index.ts";
import type { WorkedCaseInput } from "../../lib/case/worked-case.ts";
import { CaseCar } from "../../lib/case/entries.ts";
import { made, opening, second } from "./made-entries.ts";

/** A worked case as a workshop would have entered it: opened, then one answer after the other. */
export function entriesOfWorked(worked: WorkedCaseInput, caseId: string, release: string): Entry[] {
  return [
    opening(caseId, { release, car: CaseCar.parse(worked.car), invented: true }),
    ...worked.findings.map(({ id, state, level, by }, n) =>
      made(caseId, `${caseId}-a${n}`, second(n + 1), {
        kind: "answered",
        finding: id,
        state,
        how: by,
        ...(level !== undefined && { level }),
      }),
    ),
  ];
}
