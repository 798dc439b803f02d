"use client";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace } from "../../text/names.ts";
import { Fold } from "../fold.tsx";

/** How much a check tells, in words that need no unit. */
function worth(bits: number): string {
  if (bits >= 0.5) return "tells much";
  if (bits >= 0.15) return "tells a fair amount";
  return "tells a little";
}

/** A check or question in one line. */
export function checkLine(knowledge: Knowledge, proposed: ProposedCheck): string {
  if (proposed.kind === "question") return `Ask: ${proposed.name}`;
  const placed = (proposed.check?.places.length ?? 1) > 1;
  return `${capital(proposed.name)}${placed ? `, ${nameOfPlace(knowledge, proposed.place)}` : ""}`;
}

/** Other good checks and questions, best first; any of them may be opened instead. */
export function OtherChecks({
  knowledge,
  checks,
  onOpen,
}: {
  readonly knowledge: Knowledge;
  readonly checks: readonly ProposedCheck[];
  readonly onOpen: (proposed: ProposedCheck) => void;
}) {
  if (checks.length === 0) return null;
  return (
    <Fold title={<>Other good checks and questions ({checks.length})</>}>
      <ul className="plain-list">
        {checks.map((proposed) => (
          <li key={proposed.id}>
            <button type="button" className="line-button" onClick={() => onOpen(proposed)}>
              <span>{checkLine(knowledge, proposed)}</span>
              <span className="small soft">
                {minutesWords(proposed.minutes + proposed.setUpMinutes)}, {worth(proposed.gainBits)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </Fold>
  );
}
