import type { LayChoice, LayQuestion } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { layPicture } from "../../../lib/knowledge/lay-picture.ts";
import { LayPictureDrawing } from "../drawing/lay-picture.tsx";
import { capital } from "../../text/names.ts";

/** What helps to answer a question, and its answers; the figures on them are keys. */
export function QuestionCard({
  knowledge,
  question,
  onChoose,
}: {
  readonly knowledge: Knowledge;
  readonly question: LayQuestion;
  readonly onChoose: (choice: LayChoice) => void;
}) {
  const picture = layPicture(knowledge, question);
  const { kind, example, help, cautions, steps, choices } = question;
  return (
    <>
      {kind === "try" && (
        <p>
          <strong>To try at the standing car:</strong> have the customer do it while you wait.
        </p>
      )}
      {help !== undefined && <p>{help}</p>}
      {example !== undefined && <p>{capital(example)}.</p>}
      {picture !== undefined && <LayPictureDrawing picture={picture} />}
      {cautions.length > 0 && (
        <div className="cautions" role="group" aria-label="Cautions">
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      )}
      {steps.length > 0 && (
        <ol className="steps">
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      <div
        className={choices.length > 4 ? "lay-choices many" : "lay-choices"}
        role="group"
        aria-label="Answers"
      >
        {choices.map((choice, index) => (
          <button type="button" key={choice.label} onClick={() => onChoose(choice)}>
            {index < 9 && (
              <span className="key" aria-hidden="true">
                {index + 1}
              </span>
            )}
            <span>{capital(choice.label)}</span>
          </button>
        ))}
      </div>
    </>
  );
}
