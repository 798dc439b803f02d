import { type ComparedCase, MOVED_BY, type PlayedCase } from "../../../lib/case/index.ts";
import { percent } from "../../text/chance-words.ts";
import { capital } from "../../text/names.ts";

/** Which worked cases moved between two versions, and how all of them stand. */
export function CompareCases({
  id,
  cases,
}: {
  readonly id: string;
  readonly cases: readonly ComparedCase[];
}) {
  const moved = cases.filter((each) => each.moved.length > 0);
  return (
    <>
      <h3 id={`${id}-cases`}>Worked cases</h3>
      <p>
        {moved.length === 0 ? "None" : moved.length} of {cases.length} invented cases moved: another suspect
        leads, or a chance changed by more than {MOVED_BY}.
      </p>
      {moved.length > 0 && (
        <ul className="know-list">
          {moved.map((each) => (
            <li key={each.id} className="version-line" id={`${id}-${each.id}`}>
              <h4>{each.title}</h4>
              {each.moved.map((words) => (
                <p key={words}>{capital(words.replaceAll(" %", "\u00a0%"))}.</p>
              ))}
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>
          <span>
            All worked cases <span className="soft">({cases.length})</span>
          </span>
        </summary>
        <ul className="know-list">
          {cases.map((each) => (
            <li key={each.id} className="version-line">
              <h4>{each.title}</h4>
              <dl className="then-now">
                <div>
                  <dt>Before</dt>
                  <dd>
                    <Standing played={each.before} />
                  </dd>
                </div>
                <div>
                  <dt>Now</dt>
                  <dd>
                    <Standing played={each.after} />
                  </dd>
                </div>
              </dl>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Standing({ played }: { readonly played: PlayedCase }) {
  const { leader, truth, leftOut } = played;
  return (
    <>
      <span className="number">{percent(leader.probability)}</span> {leader.name}
      {truth.rank === 1 ? (
        " (the true part)"
      ) : (
        <>
          <br />
          <span className="soft">
            true part {truth.rank === 0 ? "not held" : `number ${truth.rank}`}:{" "}
            <span className="number">{percent(truth.probability)}</span> {truth.name}
          </span>
        </>
      )}
      {leftOut.length > 0 && (
        <>
          <br />
          <span className="soft">not known to it: {leftOut.join(", ")}</span>
        </>
      )}
    </>
  );
}
