import type { Urgency } from "../../../lib/case/case-urgency.ts";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";

/** What a group of cases is called. */
export function urgencyWords(urgency: Urgency | undefined, levels: Advice["levels"]): string {
  if (urgency === undefined) return "Not known how urgent";
  if (urgency.is === "nothing-told") return "Nothing ticked yet";
  return levels.find(({ id }) => id === urgency.level)?.name ?? urgency.level;
}

/**
 * A mark that tells levels apart by its shape alone: a lozenge, the fuller the graver, with a bar across the gravest; a question
 * mark where it is not known, a dotted ring where nothing was told.
 */
export function UrgencyMark({
  urgency,
  levels,
}: {
  readonly urgency: Urgency | undefined;
  readonly levels: Advice["levels"];
}) {
  const at = urgency?.is === "level" ? levels.findIndex(({ id }) => id === urgency.level) : -1;
  const share = levels.length < 2 ? 1 : 1 - at / (levels.length - 1);
  return (
    <svg className="urgency-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      {urgency?.is === "nothing-told" ? (
        <circle className="mark-dots" cx="12" cy="12" r="8" />
      ) : at < 0 ? (
        <>
          <path className="mark-line" d="M12 2 22 12 12 22 2 12Z" />
          <path className="mark-line" d="M9.5 10a2.5 2.5 0 1 1 3.6 2.2c-.8.4-1.1.8-1.1 1.8M12 16.2v.9" />
        </>
      ) : (
        <>
          <path className="mark-line" d="M12 2 22 12 12 22 2 12Z" />
          {share > 0 && (
            <path className="mark-full" d={share === 1 ? "M12 2 22 12 12 22 2 12Z" : "M2 12H22L12 22Z"} />
          )}
          {at === 0 && <path className="mark-bar" d="M6 12H18" />}
        </>
      )}
    </svg>
  );
}
