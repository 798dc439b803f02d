"use client";
import type { KeyboardEvent } from "react";
import type { Entry } from "../../../lib/case/entries.ts";
import type { LayChoice, LayQuestion } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { Fold } from "../fold.tsx";
import { LastEntry } from "../case/last-entry.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { QuestionCard } from "./question-card.tsx";
import type { Questions } from "./use-questions.ts";

/** Id of the heading that the keyboard stands on while questions are asked. */
const QUESTION = "open-question";

/** Puts the keyboard on the question, where figures answer it. */
export function focusQuestion(): void {
  const question = document.getElementById(QUESTION);
  question?.focus({ preventScroll: true });
  document.getElementById("ask")?.scrollIntoView({ block: "start" });
}

/** What a choice says, as the customer's word for it; a look at the car names the check that it is part of. */
function reported(question: LayQuestion, choice: LayChoice): EntryBody[] {
  const together = choice.answers.length > 1 || question.kind === "try";
  return choice.answers.map(({ finding, state, level }) => ({
    kind: "answered",
    finding,
    state,
    how: "report",
    ...(level !== undefined && { level }),
    // So that one undo takes back what one choice said.
    ...(together && { check: question.id }),
  }));
}

/** The next question to the customer with its answers, and what may be asked instead. */
export function AskPart({
  knowledge,
  entries,
  asking,
  unread,
  append,
  onEnough,
}: {
  readonly knowledge: Knowledge;
  readonly entries: readonly Entry[];
  readonly asking: Questions;
  /** Words were told, but nothing of them is taken yet: most likely they say what is wrong. */
  readonly unread: boolean;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  readonly onEnough: () => void;
}) {
  const { open, others, busy, failed, pick } = asking;
  const choose = (choice: LayChoice) => {
    // What is on the screen is the question before: a second tap on it is no answer to the next one.
    if (busy || open === undefined) return;
    append(...reported(open, choice));
    pick(undefined);
    document.getElementById(QUESTION)?.focus({ preventScroll: true });
  };
  /** Figures answer while the keyboard is in this part and not in a field, so that they disturb nothing else. */
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
    if (event.key === "0") {
      event.preventDefault();
      onEnough();
      return;
    }
    const choice = /^[1-9]$/.test(event.key) ? open?.choices[Number(event.key) - 1] : undefined;
    if (choice === undefined) return;
    event.preventDefault();
    choose(choice);
  };
  return (
    <SheetPart id="ask" title="Ask next" busy={busy} onKeyDown={onKeyDown}>
      <LastEntry knowledge={knowledge} entries={entries} append={append} />
      <p className="hidden" role="status">
        {busy ? "" : (open?.question ?? "Nothing more is worth asking.")}
      </p>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          What to ask could not be worked out: {failed}
        </p>
      )}
      <h3 className="lay-question" id={QUESTION} tabIndex={-1}>
        {open?.question ?? (busy ? "Working out what to ask ..." : "Nothing more is worth asking")}
      </h3>
      {knowledge.lay !== undefined && open !== undefined && (
        <p className="small soft">{knowledge.lay.before}</p>
      )}
      {open !== undefined && unread && (
        <Fold title="Take what was read first, or pick it by hand">
          <QuestionCard knowledge={knowledge} question={open} onChoose={choose} />
        </Fold>
      )}
      {open !== undefined && !unread && (
        <QuestionCard knowledge={knowledge} question={open} onChoose={choose} />
      )}
      {open === undefined && !busy && failed === undefined && (
        <p>No answer that a customer can give would say much more.</p>
      )}
      <button type="button" className="wide enough" onClick={onEnough}>
        <span className="key" aria-hidden="true">
          0
        </span>
        Enough asked: decide
      </button>
      {others.length > 0 && (
        <>
          <h4>Or ask</h4>
          <ul className="plain-list">
            {others.map((question) => (
              <li key={question.id}>
                <button
                  type="button"
                  className="line-button"
                  onClick={() => {
                    pick(question.id);
                    focusQuestion();
                  }}
                >
                  <span>{question.question}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </SheetPart>
  );
}
