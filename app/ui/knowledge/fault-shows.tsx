import { byStrength, type Shown } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { facetWords } from "../../text/facet-words.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { BasisNote, BasisOfList } from "./basis-note.tsx";
import { Row } from "./row.tsx";
import { Strength } from "./strength.tsx";

/** The complaints that a fault gives, with the moments and sounds of each. */
export function FaultShows({
  knowledge,
  shown,
}: {
  readonly knowledge: Knowledge;
  readonly shown: readonly Shown[];
}) {
  if (shown.length === 0)
    return <p>It is seldom noticed on the road; it is found by looking or by another check.</p>;
  return (
    <>
      {shown.map((one, index) => (
        <ShownComplaint
          key={`${one.complaint.id} ${index}`}
          knowledge={knowledge}
          shown={one}
          several={shown.filter((other) => other.complaint.id === one.complaint.id).length > 1}
        />
      ))}
      <BasisOfList knowledge={knowledge} weights={shown.map((s) => s.strength)} />
    </>
  );
}

function ShownComplaint({
  knowledge,
  shown,
  several,
}: {
  readonly knowledge: Knowledge;
  readonly shown: Shown;
  /** The fault gives the complaint in more than one way; this is one of them. */
  readonly several: boolean;
}) {
  const { complaint, strength, features } = shown;
  return (
    <>
      <ul className="know-list">
        <Row
          href={findingHref(complaint.id)}
          name={`${capital(complaint.name)}${several ? ", in one of several ways" : ""}`}
        >
          <Strength knowledge={knowledge} p={strength.p} />
          <BasisNote knowledge={knowledge} weight={strength} />
        </Row>
      </ul>
      {features.length > 0 && (
        <details>
          <summary>
            <span>
              What it is like then <span className="soft">({features.length})</span>
            </span>
          </summary>
          <dl className="often">
            {byStrength(features, ({ p }) => p).map(({ p, items }) => (
              <div key={p}>
                <dt>
                  <Strength knowledge={knowledge} p={p} />
                </dt>
                <dd>
                  {items
                    .map(({ feature, facet }) =>
                      facet === undefined ? feature.name : `${feature.name} (${facetWords(facet)})`,
                    )
                    .join("; ")}
                </dd>
              </div>
            ))}
          </dl>
        </details>
      )}
    </>
  );
}
