"use client";
import { goToPart } from "../sheet-part.tsx";
import { focusQuestion } from "./ask-part.tsx";

const STEPS = [
  { id: "complaint", name: "Take in" },
  { id: "ask", name: "Ask" },
  { id: "decide", name: "Decide" },
  { id: "say", name: "Say" },
] as const;

export type DeskStep = (typeof STEPS)[number]["id"];

/** The four steps of a call, at the thumb; the one that is next is filled. */
export function DeskBar({ step }: { readonly step: DeskStep }) {
  return (
    <nav className="next-bar always" aria-label="Next">
      <div className="desk-steps">
        {STEPS.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            className={id === step ? "main" : undefined}
            aria-current={id === step ? "step" : undefined}
            onClick={() => (id === "ask" ? focusQuestion() : goToPart(id))}
          >
            {id === step ? `Next: ${name.toLowerCase()}` : name}
          </button>
        ))}
      </div>
    </nav>
  );
}
