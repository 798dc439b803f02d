import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Exercise } from "../../../lib/training/index.ts";
import type { PreviewShown } from "../../engine/exercise-protocol.ts";
import { capital, nameOfFinding, nameOfSuspect } from "../../text/names.ts";
import { stateWords } from "../../text/state-words.ts";
import { OpenOnPaper, PaperPart } from "./exercise-on-paper.tsx";
import { PreviewFacts, PreviewPath, PreviewTraps, PreviewWarnings } from "./preview-pieces.tsx";

/** What whoever runs the exercise needs: the hidden fault, the best way with its results, the traps. */
export function AnswerSheet({
  exercise,
  knowledge,
  shown,
}: {
  readonly exercise: Exercise;
  readonly knowledge: Knowledge;
  readonly shown: PreviewShown;
}) {
  const { faults, results } = exercise.hidden;
  return (
    <article className="job-card">
      <OpenOnPaper title="Answer sheet" exercise={exercise} knowledge={knowledge} />
      <PaperPart title="Hidden">
        <ul className="verdict-list">
          {faults.map(({ fault, place, causes }) => (
            <li key={`${fault}@${place}`}>
              <strong>{capital(nameOfSuspect(knowledge, `${fault}@${place}`))}</strong>
              {!causes && " (innocent wear: there, but not behind the complaint)"}
            </li>
          ))}
        </ul>
      </PaperPart>
      <PaperPart title="How it goes">
        <PreviewWarnings knowledge={knowledge} shown={shown} exercise={exercise} />
        <PreviewFacts shown={shown} />
        <PreviewTraps knowledge={knowledge} shown={shown} />
      </PaperPart>
      <PaperPart title="The best way">
        <PreviewPath knowledge={knowledge} shown={shown} />
      </PaperPart>
      {results.length > 0 && (
        <PaperPart title="Set by hand">
          <ul>
            {results.map((result) => (
              <li key={result.finding}>
                {capital(nameOfFinding(knowledge, result.finding))}: {stateWords(result)}
              </li>
            ))}
          </ul>
        </PaperPart>
      )}
      <p className="small soft">
        Other checks than these have results too; they follow the model and stand in the exercise itself.
      </p>
    </article>
  );
}
