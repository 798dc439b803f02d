import type { LimitOf } from "../../../lib/knowledge/pages/index.ts";
import type { CompiledObservation } from "../../../lib/knowledge/schema/compiled.ts";
import { countryWords } from "../../text/country-words.ts";
import { levelWords } from "../../text/names.ts";

/** What is measured, from where each grade counts, and the published limits beside it. */
export function LimitLines({
  observation,
  limits,
  decides,
}: {
  readonly observation: CompiledObservation;
  readonly limits: readonly LimitOf[];
  /** What is said beside every limit. */
  readonly decides: string;
}) {
  const { measure, levels } = observation;
  const quoted = measure?.limits ?? [];
  if (measure === undefined && limits.length === 0) return null;
  return (
    <div className="limits small">
      {measure !== undefined && (
        <p>
          Measured: {measure.quantity};{" "}
          {measure.atLeast
            .map((from, i) => `${levelWords(levels[i] ?? "present")} from ${from} ${measure.unit}`)
            .join(", ")}
          .
        </p>
      )}
      {(limits.length > 0 || quoted.length > 0) && (
        <ul>
          {limits.map(({ limit, figure }) => (
            <li key={limit.id}>
              Limit under {limit.rule} ({countryWords(limit.country)}): {figure}; {limit.applies}.
              {limit.note !== undefined && ` ${limit.note}`}
            </li>
          ))}
          {limits.length === 0 && quoted.map((line) => <li key={line}>Limit: {line}.</li>)}
        </ul>
      )}
      {(limits.length > 0 || quoted.length > 0) && (
        <p>
          <strong>{limits.length > 0 ? decides : "The maker's figure decides."}</strong>
        </p>
      )}
    </div>
  );
}
