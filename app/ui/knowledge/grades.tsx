import type { Knowledge, Weight } from "../../../lib/knowledge/schema/compiled.ts";
import { levelWords } from "../../text/names.ts";
import { Strength } from "./strength.tsx";

/** How often each grade of a finding is reached, and from which grade on it proves the fault. */
export function Grades({
  knowledge,
  levels,
  weights,
  provesFrom,
}: {
  readonly knowledge: Knowledge;
  readonly levels: readonly string[];
  readonly weights: readonly Weight[];
  readonly provesFrom: number | undefined;
}) {
  const graded = weights.length > 1;
  return (
    <>
      {weights.map(({ p }, i) => (
        <span key={levels[i] ?? i} className="grade">
          {graded && (
            <span>
              {levelWords(levels[i] ?? "")}
              {i < weights.length - 1 ? " or more" : ""}:{" "}
            </span>
          )}
          <Strength knowledge={knowledge} p={p} />
        </span>
      ))}
      {provesFrom !== undefined && (
        <strong className="proves">
          {graded && provesFrom > 0 ? `${levelWords(levels[provesFrom] ?? "")} proves it` : "proves it"}
        </strong>
      )}
    </>
  );
}
