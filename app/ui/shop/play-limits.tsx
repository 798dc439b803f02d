import type { PlayAnswer } from "../../../lib/requests/play-request.ts";
import { capital } from "../../text/names.ts";

const OF_MOST = {
  under: "under the limit",
  at: "at the limit itself",
  over: "over the limit",
} as const;
const OF_LEAST = {
  under: "less than must be left",
  at: "just what must be left",
  over: "more than must be left",
} as const;

/** A movement in every unit, and where it stands beside each rule. */
export function PlayLimits({
  answer,
  circle,
}: {
  readonly answer: PlayAnswer;
  /** What it is measured on; a depth has none. */
  readonly circle: string | undefined;
}) {
  const depth = answer.limits.some(({ least }) => least !== undefined);
  const words = depth ? OF_LEAST : OF_MOST;
  return (
    <>
      <p className="lead" role="status">
        {movementWords(answer, depth)}
      </p>
      {answer.deg === undefined && circle !== undefined && (
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
              {depth ? "At least" : "At most"}
            </th>
          </tr>
        </thead>
        <tbody>
          {answer.limits.map(({ id, rule, country, applies, note, standing, most, least, needs }) => (
            <tr key={id}>
              <th scope="row">
                <strong>
                  {standing === "unknown"
                    ? `Needs the ${needs === "rim" ? "rim's size" : `diameter of ${circle}`}`
                    : capital(words[standing])}
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
                <Size size={most ?? least} depth={least !== undefined} />
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

function Size({
  size,
  depth,
}: {
  readonly size: PlayAnswer["limits"][number]["most"];
  readonly depth: boolean;
}) {
  if (size === undefined) return null;
  const { mm, inches } = digits(depth);
  return (
    <>
      {size.mm.toFixed(mm)} mm
      <span className="small detail">{size.in.toFixed(inches)} in</span>
      {size.deg !== undefined && <span className="small detail">{size.deg.toFixed(1)}&deg;</span>}
    </>
  );
}

/** Digits after the point: with fewer, 2/32 in and 1.6 mm of tread would look the same and stand differently. */
function digits(depth: boolean): { mm: number; inches: number } {
  return depth ? { mm: 2, inches: 4 } : { mm: 1, inches: 3 };
}

function movementWords({ mm, in: inches, deg }: PlayAnswer, depth: boolean): string {
  const to = digits(depth);
  return `${mm.toFixed(to.mm)} mm = ${inches.toFixed(to.inches)} in${deg === undefined ? "" : ` = ${deg.toFixed(2)}°`}`;
}
