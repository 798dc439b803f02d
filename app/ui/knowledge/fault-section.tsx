import type { FaultEntry } from "../../../lib/knowledge/pages/index.ts";
import type { CompiledPart, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { chanceWords } from "../../text/chance-words.ts";
import { capital } from "../../text/names.ts";
import { needsWords } from "../../text/needs-words.ts";
import { partHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { FaultProof } from "./fault-proof.tsx";
import { FaultRepair } from "./fault-repair.tsx";
import { FaultShows } from "./fault-shows.tsx";
import { FaultWear } from "./fault-wear.tsx";
import { Row } from "./row.tsx";
import { SourceList } from "./source-list.tsx";

/** One way in which a part fails. */
export function FaultSection({
  knowledge,
  part,
  entry,
}: {
  readonly knowledge: Knowledge;
  readonly part: CompiledPart;
  readonly entry: FaultEntry;
}) {
  const { fault, inseparable } = entry;
  const { severity, stop } = fault;
  const partOf = (id: string) => knowledge.parts.find((p) => p.id === id)?.name ?? id;
  return (
    <SheetPart id={fault.id} title={capital(fault.name)}>
      {fault.otherNames.length > 0 && (
        <p className="small soft">Also called: {fault.otherNames.join(", ")}</p>
      )}
      {entry.needs.length > 0 && <p className="small">Only with {needsWords(entry.needs)}.</p>}
      <p>
        <strong>{capital(severity.word)}</strong>: {severity.reason}.{" "}
        <span className="small soft">
          {severity.item === undefined
            ? "Directive 2014/45/EU has no item for it."
            : `Item ${severity.item} of Annex I to Directive 2014/45/EU.`}
        </span>
      </p>
      {stop !== undefined && (
        <div className="stop">
          <p className="stop-say">
            <span className="stop-sign" aria-hidden="true">
              STOP
            </span>
            {stop.say}
          </p>
          <p className="small">
            Said in a case when it is {chanceWords(stop.from)} or likelier that it is there.
          </p>
        </div>
      )}
      <h3>How it is proven</h3>
      <FaultProof knowledge={knowledge} seen={entry.seen} />
      {inseparable.length > 0 && (
        <>
          <p>No check tells it from:</p>
          <ul className="know-list">
            {inseparable.map(({ fault: other, why }) => (
              <Row
                key={other.id}
                href={partHref(other.part, other.id)}
                name={`${capital(partOf(other.part))}: ${other.name}`}
                note={why}
              />
            ))}
          </ul>
        </>
      )}
      <h3>How it shows</h3>
      <FaultShows knowledge={knowledge} shown={entry.shown} />
      <h3>How it comes</h3>
      <FaultWear knowledge={knowledge} entry={entry} name={`${part.name}: ${fault.name}`} />
      <h3>Repair</h3>
      <FaultRepair entry={entry} />
      <details>
        <summary>
          <span>Where this comes from</span>
        </summary>
        <SourceList uses={entry.sources} />
      </details>
    </SheetPart>
  );
}
