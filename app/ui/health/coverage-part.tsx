import type { SiteHealth } from "../../knowledge/site-health.ts";
import { capital, nameOfPart } from "../../text/names.ts";
import { findingHref, partHref } from "../../text/page-links.ts";
import { nameOfRecord } from "../../text/record-words.ts";
import { TextLink } from "../knowledge/row.tsx";
import { FaultLinks } from "./fault-links.tsx";

/** Counts of what the knowledge holds, by complaint, and its gaps. */
export function CoveragePart({ health: { knowledge, coverage } }: { readonly health: SiteHealth }) {
  const counts = [
    ["Parts", coverage.parts],
    ["Ways to fail", coverage.faults],
    ["Complaints", coverage.complaints],
    ["Features of complaints", coverage.features],
    ["Observations", coverage.observations],
    ["Things that happened lately", coverage.contexts],
    ["Checks", coverage.checks],
  ] as const;
  const { withoutDecisiveCheck, withoutShape } = coverage;
  return (
    <>
      <dl className="facts">
        {counts.map(([name, count]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="number">{count}</dd>
          </div>
        ))}
      </dl>
      <h3 id="families">By complaint</h3>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">Complaint</th>
            <th scope="col">Parts</th>
            <th scope="col">Faults</th>
            <th scope="col">Features</th>
            <th scope="col">Checks</th>
          </tr>
        </thead>
        <tbody>
          {coverage.families.map((family) => (
            <tr key={family.complaint}>
              <th scope="row">
                <TextLink href={findingHref(family.complaint)}>{capital(family.name)}</TextLink>
              </th>
              <td>{family.parts}</td>
              <td>{family.faults}</td>
              <td>{family.features}</td>
              <td>{family.checks}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">
        Checks: those of anything that a fault behind the complaint gives. A fault can show as several
        complaints.
      </p>
      <h3 id="without-decisive-check">Faults without a decisive check</h3>
      {withoutDecisiveCheck.length === 0 ? (
        <p>None: some check can prove each fault.</p>
      ) : (
        <FaultLinks
          faults={withoutDecisiveCheck.map((id) => ({
            id,
            name: nameOfRecord(knowledge, "faults", id),
            part: knowledge.faults.find((fault) => fault.id === id)?.part ?? "",
          }))}
        />
      )}
      <h3 id="without-shape">Parts without a shape in the drawing</h3>
      {withoutShape.length === 0 ? (
        <p>None: each part is drawn in some layout.</p>
      ) : (
        <ul>
          {withoutShape.map((id) => (
            <li key={id}>
              <TextLink href={partHref(id)}>{capital(nameOfPart(knowledge, id))}</TextLink>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
