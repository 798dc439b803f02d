import type { FaultEntry } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { percent } from "../../text/chance-words.ts";
import { capital } from "../../text/names.ts";
import { findingHref } from "../../text/page-links.ts";
import { SourceNote } from "./source-list.tsx";
import { Row } from "./row.tsx";
import { Strength } from "./strength.tsx";
import { WearPlot } from "./wear-plot.tsx";
import { factorWords, lifeWords } from "./wear-words.ts";

/** How a fault comes with distance or age, and what moves its chance. */
export function FaultWear({
  knowledge,
  entry,
  name,
}: {
  readonly knowledge: Knowledge;
  readonly entry: FaultEntry;
  readonly name: string;
}) {
  const { fault, curve, contexts } = entry;
  const source = knowledge.sources.find(({ id }) => id === fault.life.basis);
  return (
    <>
      {"share" in fault.life && (
        <p>
          It does not come with distance. Share of cars that have it now:{" "}
          <Strength knowledge={knowledge} p={fault.life.share} />.
        </p>
      )}
      {curve !== undefined && (
        <>
          <p>
            {curve.half > curve.until
              ? `Few come to it: ${percent(curve.rows.at(-1)?.failed ?? 0)} have failed by ${lifeWords(curve.until, curve.unit)}`
              : `Half of them have failed by about ${lifeWords(curve.half, curve.unit)}`}
            , on an average car and if none was renewed before. Single cars differ widely.
          </p>
          <WearPlot curve={curve} title={`Share failed against ${curve.unit}: ${name}`} />
          <p className="small soft">
            Weibull life: characteristic {lifeWords(curve.characteristic, curve.unit)}, shape {curve.shape}.
          </p>
        </>
      )}
      <SourceNote source={source} />
      {fault.modifiers.length > 0 && (
        <ul>
          {fault.modifiers.map(({ why, life, odds }) => (
            <li key={`${why} ${life} ${odds}`}>
              {why}{" "}
              <span className="soft">
                {[
                  life === undefined ? "" : `Life times ${life}`,
                  odds === undefined ? "" : `Odds times ${odds}`,
                ]
                  .filter((t) => t !== "")
                  .join(", ")}
              </span>
            </li>
          ))}
        </ul>
      )}
      {contexts.length > 0 && (
        <details>
          <summary>
            <span>
              What happened lately <span className="soft">({contexts.length})</span>
            </span>
          </summary>
          <ul className="know-list">
            {contexts.map(({ context, factor }) => (
              <Row key={context.id} href={findingHref(context.id)} name={capital(context.name)}>
                {factorWords(factor)}
              </Row>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
