import type { PlayAnswer } from "../../../lib/requests/play-request.ts";

const STANDING = {
  under: "under the limit",
  at: "at the limit itself",
  over: "over the limit",
} as const;

/** A movement in every unit, and where it stands beside each rule. */
export function PlayLimits({ answer, circle }: { readonly answer: PlayAnswer; readonly circle: string }) {
  return (
    <>
      <p className="lead" role="status">
        {movementWords(answer)}
      </p>
      {answer.deg === undefined && (
        <p className="small soft">With the diameter of {circle} it is told in degrees too.</p>
      )}
      <table className="figures">
        <caption className="small soft">
          Published limits; they differ by country, year and kind of vehicle
        </caption>
        <thead>
          <tr>
            <th scope="col">Rule</th>
            <th scope="col" className="figure">
              At most
            </th>
          </tr>
        </thead>
        <tbody>
          {answer.limits.map(({ id, rule, country, applies, note, standing, most, needs }) => (
            <tr key={id}>
              <th scope="row">
                <strong>
                  {standing === "unknown"
                    ? `Needs the ${needs === "rim" ? "rim's size" : `diameter of ${circle}`}`
                    : sentence(STANDING[standing])}
                </strong>
                <span className="detail">
                  {rule} ({country})
                </span>
                <span className="small soft detail">
                  {applies}
                  {note !== undefined && `. ${note}`}
                </span>
              </th>
              <td className="figure">
                {most !== undefined && (
                  <>
                    {most.mm.toFixed(1)} mm
                    <span className="small detail">{most.in.toFixed(3)} in</span>
                    {most.deg !== undefined && (
                      <span className="small detail">{most.deg.toFixed(1)}&deg;</span>
                    )}
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {answer.limits.length === 0 && <p className="notice">No limit of these rules is held for this car.</p>}
      <p className="notice">
        <strong>{answer.decides}</strong>
      </p>
    </>
  );
}

function movementWords({ mm, in: inches, deg }: PlayAnswer): string {
  return `${mm.toFixed(1)} mm = ${inches.toFixed(3)} in${deg === undefined ? "" : ` = ${deg.toFixed(2)}°`}`;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
