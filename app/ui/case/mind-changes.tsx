"use client";
import type { ProposeOptions } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfCheck } from "../../text/names.ts";

const MOST = 8;
const LOOKED_AT = 60;

/** Results of the checks at hand that would put another suspect in front, most probable first. */
export function MindChanges({
  knowledge,
  situation,
  options,
  onCheck,
}: {
  readonly knowledge: Knowledge;
  readonly situation: Situation;
  readonly options: ProposeOptions;
  readonly onCheck: (id: string) => void;
}) {
  const wide = { ...options, limit: LOOKED_AT };
  const mind = useAnswer("mind", { ...situation, options: wide }, JSON.stringify([situation, wide]));
  if (mind.failed !== undefined && mind.value === undefined) return <p className="trouble">{mind.failed}</p>;
  if (mind.value === undefined) return <p className="soft">Working it out ...</p>;
  if (mind.value.length === 0) {
    return <p>No single result of a check at hand would put another part in front.</p>;
  }
  return (
    <>
      <p className="small soft">
        Results that would put another part in front, most probable first; of the checks that can be made now.
      </p>
      <ul className="plain-list" aria-busy={mind.busy}>
        {mind.value.slice(0, MOST).map((change) => (
          <li key={`${change.check} ${change.words}`} className="found">
            <span>
              {capital(change.words)}.{" "}
              <span className="soft">
                {capital(chanceWords(change.probability))} ({percent(change.probability)}) that it comes out
                so.
              </span>
            </span>
            {change.isQuestion ? (
              <span className="small">{change.name}</span>
            ) : (
              <button type="button" onClick={() => onCheck(change.check)}>
                {capital(nameOfCheck(knowledge, change.check))}
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
