"use client";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Preview, Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfFindingAt } from "../../text/names.ts";
import { ChanceBar } from "../case/chance-bar.tsx";
import { resultWords } from "./result.ts";

/** What each result would do to the ranking, before the check is made. */
export function Previews({
  knowledge,
  proposed,
  situation,
}: {
  readonly knowledge: Knowledge;
  readonly proposed: ProposedCheck;
  readonly situation: Situation;
}) {
  const key = JSON.stringify([proposed.id, situation]);
  const preview = useAnswer("preview", { ...situation, proposed }, key);
  if (preview.failed !== undefined)
    return <p className="trouble">What it would tell could not be worked out ({preview.failed}).</p>;
  if (preview.value === undefined || !preview.ok)
    return <p className="soft">Working out what it would tell ...</p>;
  return (
    <ul className="plain-list previews">
      {preview.value
        .toSorted((a, b) => b.probability - a.probability)
        .map((result) => (
          <OnePreview
            key={JSON.stringify(result.answers)}
            knowledge={knowledge}
            result={result}
            place={proposed.place}
            question={proposed.kind === "question"}
            single={proposed.settles.length === 1}
          />
        ))}
    </ul>
  );
}

function OnePreview({
  knowledge,
  result,
  place,
  question,
  single,
}: {
  readonly knowledge: Knowledge;
  readonly result: Preview;
  readonly place: string | undefined;
  readonly question: boolean;
  readonly single: boolean;
}) {
  const found = result.answers.find((a) => a.state === "present") ?? result.answers[0];
  const words =
    found === undefined
      ? ""
      : single
        ? resultWords(found, question)
        : found.state === "absent"
          ? "Nothing found"
          : `${capital(nameOfFindingAt(knowledge, found.finding, place))}: ${resultWords(found).toLowerCase()}`;
  return (
    <li className="preview">
      <p>
        <strong>{words}</strong>{" "}
        <span className="small soft">{chanceWords(result.probability)} to come out so</span>
      </p>
      <ul className="plain-list small">
        {result.leaders.slice(0, 2).map((leader) => (
          <li key={leader.id} className="preview-leader">
            <span>{capital(leader.name)}</span>
            <span className="number">{percent(leader.explains)}</span>
            <ChanceBar chance={leader.explains} look="solid" />
          </li>
        ))}
        {result.notInKnowledge > (result.leaders[0]?.explains ?? 0) && (
          <li className="preview-leader">
            <span>Not in this knowledge</span>
            <span className="number">{percent(result.notInKnowledge)}</span>
            <ChanceBar chance={result.notInKnowledge} look="hatched" />
          </li>
        )}
      </ul>
    </li>
  );
}
