import { byStrength, type Cause } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { facetWords } from "../../text/facet-words.ts";
import { capital } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { BasisNote, BasisOfList } from "./basis-note.tsx";
import { Grades } from "./grades.tsx";
import { Row } from "./row.tsx";
import { Strength } from "./strength.tsx";

/** Faults that give a finding, the strongest first; after `open` of them the rest is folded away, those alike together. */
export function CauseList({
  knowledge,
  causes,
  levels,
  open = 15,
}: {
  readonly knowledge: Knowledge;
  readonly causes: readonly Cause[];
  /** Grades of the finding; one name for a plain yes or no. */
  readonly levels: readonly string[];
  readonly open?: number;
}) {
  const later = causes.slice(open);
  return (
    <>
      <ul className="know-list">
        {causes.slice(0, open).map((cause) => (
          <Row
            key={`${cause.fault.id} ${cause.facet}`}
            href={partHref(cause.part.id, cause.fault.id)}
            name={capital(nameOf(cause))}
          >
            <Grades
              knowledge={knowledge}
              levels={levels}
              weights={cause.weights}
              provesFrom={cause.provesFrom}
            />
            <BasisNote knowledge={knowledge} weight={cause.weights[0]} />
          </Row>
        ))}
      </ul>
      {later.length > 0 && (
        <details>
          <summary>
            <span>
              {later.length} more <span className="soft">that give it as often or less</span>
            </span>
          </summary>
          <dl className="often">
            {byStrength(later, ({ weights }) => weights[0]?.p ?? 0).map(({ p, items }) => (
              <div key={p}>
                <dt>
                  <Strength knowledge={knowledge} p={p} />
                </dt>
                <dd>{items.map(nameOf).join("; ")}</dd>
              </div>
            ))}
          </dl>
        </details>
      )}
      <BasisOfList knowledge={knowledge} weights={causes.flatMap(({ weights }) => weights)} />
    </>
  );
}

function nameOf({ fault, part, facet }: Cause): string {
  return `${part.name}: ${fault.name}${facet === undefined ? "" : ` (${facetWords(facet)})`}`;
}
