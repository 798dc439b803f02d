import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfCheck } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import type { Cost, LostIn } from "./replies.ts";
import { shareWords } from "./tally-table.tsx";

/** As many as a class talks over in an hour; the rest is there when it is wanted. */
const FIRST = 8;

/** A check in words; its id while the knowledge is not here, or does not hold it. */
const checkName = (knowledge: Knowledge | undefined, id: string): string => {
  if (knowledge === undefined) return id;
  const name = capital(nameOfCheck(knowledge, id));
  return id.startsWith("ask:") ? `Question: ${name}` : name;
};

/** Checks with the attempts and the minutes that they cost, the dearest first. */
export function CostsTable({
  caption,
  costs,
  knowledge,
}: {
  readonly caption: string;
  readonly costs: readonly Cost[];
  readonly knowledge: Knowledge | undefined;
}) {
  const rest = costs.slice(FIRST);
  return (
    <>
      <Rows caption={caption} costs={costs.slice(0, FIRST)} knowledge={knowledge} />
      {rest.length > 0 && (
        <Fold title={`${rest.length} more`}>
          <Rows caption={`${caption}: the rest`} costs={rest} knowledge={knowledge} />
        </Fold>
      )}
    </>
  );
}

function Rows({ caption, costs, knowledge }: Parameters<typeof CostsTable>[0]) {
  return (
    <table className="figures">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Check</th>
          <th scope="col">Attempts</th>
          <th scope="col">Lost</th>
        </tr>
      </thead>
      <tbody>
        {costs.map(({ check, attempts, minutes }) => (
          <tr key={check}>
            <th scope="row">{checkName(knowledge, check)}</th>
            <td>{attempts}</td>
            <td>{minutesWords(minutes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const LOSSES: readonly { readonly id: keyof LostIn; readonly name: string }[] = [
  { id: "check", name: "Checks that told less than another would have" },
  { id: "question", name: "Questions that told less" },
  { id: "setUp", name: "Bringing the car into another set-up for them" },
  { id: "repeated", name: "Finding again what was known" },
  { id: "afterProof", name: "Checking on after the proof" },
];

/** What the minutes are lost in, each counted once. */
export function LostTable({ lostIn }: { readonly lostIn: LostIn }) {
  const all = LOSSES.reduce((sum, { id }) => sum + lostIn[id], 0);
  return (
    <table className="figures">
      <caption>What the minutes went into</caption>
      <thead>
        <tr>
          <th scope="col">Kind of step</th>
          <th scope="col">Lost</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {LOSSES.map(({ id, name }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            <td>{minutesWords(lostIn[id])}</td>
            <td>{shareWords(all === 0 ? undefined : lostIn[id] / all)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
