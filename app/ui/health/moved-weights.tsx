import {
  changeWords,
  type Knowledge,
  type KnowledgeDiff,
  type WeightChange,
  weightWords,
} from "../../../lib/knowledge/index.ts";
import { capital } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { TextLink } from "../knowledge/row.tsx";

/** So many are shown at once, and so many more when asked. */
const FIRST = 20;
const MORE = 280;

/** Probabilities that moved, most moved first. */
export function MovedWeights({
  id,
  knowledge,
  diff,
}: {
  readonly id: string;
  readonly knowledge: Knowledge;
  readonly diff: KnowledgeDiff;
}) {
  const { weights } = diff;
  const first = weights.slice(0, FIRST);
  const more = weights.slice(FIRST, FIRST + MORE);
  const rest = weights.length - first.length - more.length;
  const least = Math.abs(more.at(-1)?.logOddsDelta ?? 0);
  return (
    <>
      <h3 id={`${id}-weights`}>Chances that moved</h3>
      <p>
        {weights.length === 0 ? "None." : `${weights.length}, most moved first. `}
        {weights.length > 0 && "A log-odds of 0.7 doubles the odds."}
      </p>
      <Lines knowledge={knowledge} weights={first} />
      {more.length > 0 && (
        <details>
          <summary>
            <span>
              The next {more.length} <span className="soft">(moved by {least.toFixed(2)} or more)</span>
            </span>
          </summary>
          <Lines knowledge={knowledge} weights={more} />
        </details>
      )}
      {rest > 0 && (
        <p className="small soft">
          {rest} more moved less. All:{" "}
          <code>
            npx cornerwise diff {diff.from} {diff.to}
          </code>
          , or the folder <code>knowledge</code> for a version that is not frozen.
        </p>
      )}
    </>
  );
}

function Lines({
  knowledge,
  weights,
}: {
  readonly knowledge: Knowledge;
  readonly weights: readonly WeightChange[];
}) {
  return (
    <ul className="know-list">
      {weights.map((change) => {
        const { subject, says, part } = weightWords(knowledge, change.weight);
        return (
          <li key={change.weight} className="version-line">
            <p>
              {part === undefined ? (
                capital(subject)
              ) : (
                <TextLink href={partHref(part)}>{capital(subject)}</TextLink>
              )}
              : {says}
            </p>
            <p className="small soft number">{changeWords(change)}</p>
          </li>
        );
      })}
    </ul>
  );
}
