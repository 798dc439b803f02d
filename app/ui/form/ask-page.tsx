"use client";
import { useState } from "react";
import type { View } from "./view.ts";
import { LayPictureDrawing } from "../drawing/lay-picture.tsx";
import { PageTitle } from "./page-title.tsx";

/** One question with its choices; a tap answers it. */
export function AskPage({
  question,
  answered,
  most,
  sending,
  onAnswer,
  onBack,
}: {
  readonly question: NonNullable<View["question"]>;
  readonly answered: number;
  readonly most: number;
  readonly sending: boolean;
  readonly onAnswer: (choice: number) => void;
  readonly onBack: () => void;
}) {
  const [picked, setPicked] = useState<number>();
  const { text, help, example, picture, steps, cautions, choices } = question;
  return (
    <>
      <p className="form-progress small">
        <label htmlFor="form-progress">
          Question {answered + 1} of at most {most}
        </label>
        <progress id="form-progress" value={answered} max={most} />
      </p>
      <PageTitle>{text}</PageTitle>
      {help !== null && <p>{help}</p>}
      {picture !== null && <LayPictureDrawing picture={picture} />}
      {example !== null && <p className="soft">For example: {example}</p>}
      {cautions.map((caution) => (
        <p key={caution} className="trouble">
          {caution}
        </p>
      ))}
      {steps.length > 0 && (
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      <div role="group" aria-labelledby="form-title">
        {choices.map((label, index) => (
          <button
            key={label}
            type="button"
            className="form-choice"
            disabled={sending}
            aria-pressed={sending && picked === index ? true : undefined}
            onClick={() => {
              setPicked(index);
              onAnswer(index);
            }}
          >
            {label}
          </button>
        ))}
      </div>
      <button type="button" className="plain form-back" disabled={sending} onClick={onBack}>
        Back
      </button>
    </>
  );
}
