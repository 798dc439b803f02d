import type { Seen } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { checkHref, findingHref } from "../../text/page-links.ts";
import { BasisNote, BasisOfList } from "./basis-note.tsx";
import { Grades } from "./grades.tsx";
import { LimitLines } from "./limit-lines.tsx";
import { Row } from "./row.tsx";

/** What checks find when the fault is there: what proves it first, with the checks that find it. */
export function FaultProof({
  knowledge,
  seen,
}: {
  readonly knowledge: Knowledge;
  readonly seen: readonly Seen[];
}) {
  const decisive = seen.filter(({ provesFrom }) => provesFrom !== undefined);
  const others = seen.filter(({ provesFrom }) => provesFrom === undefined);
  const weights = seen.flatMap(({ grades }) => grades.map(({ weight }) => weight));
  return (
    <>
      {decisive.length === 0 && <p>No single finding proves it; it is found by ruling out the others.</p>}
      <SeenList knowledge={knowledge} seen={decisive} />
      {others.length > 0 && (
        <details>
          <summary>
            <span>
              {decisive.length > 0 ? "Other signs of it" : "Signs of it"}{" "}
              <span className="soft">({others.length})</span>
            </span>
          </summary>
          <SeenList knowledge={knowledge} seen={others} />
        </details>
      )}
      <BasisOfList knowledge={knowledge} weights={weights} />
    </>
  );
}

function SeenList({ knowledge, seen }: { readonly knowledge: Knowledge; readonly seen: readonly Seen[] }) {
  return (
    <ul className="know-list">
      {seen.map(({ observation, grades, provesFrom, checks, limits }) => (
        <li key={observation.id} className="seen">
          <ul className="know-list">
            <Row href={findingHref(observation.id)} name={capital(observation.name)}>
              <Grades
                knowledge={knowledge}
                levels={grades.map(({ name }) => name)}
                weights={grades.map(({ weight }) => weight)}
                provesFrom={provesFrom}
              />
              <BasisNote knowledge={knowledge} weight={grades[0]?.weight} />
            </Row>
            {checks.map((check) => (
              <Row key={check.id} href={checkHref(check.id)} name={`Check: ${check.name}`}>
                {minutesWords(check.minutes)}
              </Row>
            ))}
          </ul>
          <LimitLines observation={observation} limits={limits} decides={knowledge.limits.decides} />
        </li>
      ))}
    </ul>
  );
}
