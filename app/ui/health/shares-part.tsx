import type { ShareLine } from "../../../lib/engine/index.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";

const BASES: { readonly [B in ShareLine["base"]]: string } = {
  tests: "Share of inspections with at least one such defect",
  defects: "Defects, as a ratio to another kind",
  cars: "Share of cars that have at least one such fault",
  order: "Order in a published list; only the order counts",
};

/** Published shares of faults beside what the priors expect of such cars. */
export function SharesPart({ health: { knowledge, shares, assumptions } }: { readonly health: SiteHealth }) {
  if (shares.length === 0)
    return <p className="notice">This version has no published shares to be held to.</p>;
  const fleets = knowledge.publishedShares?.fleets ?? [];
  const sources = [
    ...new Map(shares.flatMap(({ source }) => (source ? [[source.id, source]] : []))).values(),
  ];
  return (
    <>
      <p>{knowledge.publishedShares?.about}</p>
      {fleets.map((fleet) => (
        <details key={fleet.id}>
          <summary>
            <span>
              {fleet.name}{" "}
              <span className="soft">
                ({shares.filter((line) => line.fleet === fleet.id).length} figures)
              </span>
            </span>
          </summary>
          {(Object.keys(BASES) as ShareLine["base"][]).map((base) => (
            <Shares
              key={base}
              title={BASES[base]}
              lines={shares.filter((line) => line.fleet === fleet.id && line.base === base)}
            />
          ))}
        </details>
      ))}
      <h3 id="shares-sources">Where the published figures are from</h3>
      <ul className="small">
        {sources.map((source) => (
          <li key={source.id}>
            {source.title}; {source.where}
            {source.status === "memory" && " (from memory, the text was not read)"}
          </li>
        ))}
      </ul>
      <h3 id="shares-assumptions">What nobody publishes and is assumed</h3>
      <ul className="small">
        {assumptions.map((assumption) => (
          <li key={assumption}>{assumption}</li>
        ))}
      </ul>
    </>
  );
}

function Shares({ title, lines }: { readonly title: string; readonly lines: readonly ShareLine[] }) {
  if (lines.length === 0) return null;
  return (
    <table className="figures">
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Published</th>
          <th scope="col">Here</th>
          <th scope="col">Ratio</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.id}>
            <th scope="row">
              {line.name}
              {line.age !== undefined && <span className="soft">, {line.age} years</span>}
              {line.against !== undefined && (
                <span className="soft">
                  {" "}
                  against {line.against.name}
                  {line.against.age !== undefined && `, ${line.against.age} years`}
                </span>
              )}
            </th>
            <td>{figure(line, line.published)}</td>
            <td>{figure(line, line.model)}</td>
            <td>{line.ratio.toFixed(2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function figure({ against, base }: ShareLine, value: number): string {
  return against !== undefined || base === "order" ? value.toFixed(2) : `${(100 * value).toFixed(1)} %`;
}
