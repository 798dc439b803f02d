"use client";
import { useId } from "react";
import { submitOnKeys } from "../submit-on-keys.ts";
import { useDraft } from "../../store/use-draft.ts";

/** The customer's words, typed or pasted; kept as a draft until they are read. */
export function ToldBox({
  caseId,
  first,
  onTold,
}: {
  readonly caseId: string;
  readonly first: boolean;
  readonly onTold: (text: string) => void;
}) {
  const [text, setText, ready] = useDraft(`${caseId}/told`);
  const id = useId();
  const trimmed = text.trim();
  const tooLong = trimmed.length > 4000;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (trimmed === "" || tooLong) return;
        onTold(trimmed);
        setText("");
      }}
    >
      <label htmlFor={id}>{first ? "What does the customer say?" : "Did the customer say more?"}</label>
      <textarea
        id={id}
        rows={first ? 5 : 2}
        className={first ? undefined : "low"}
        value={text}
        disabled={!ready}
        aria-describedby={tooLong ? `${id}-long` : undefined}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={submitOnKeys}
      />
      {tooLong && (
        <p className="trouble" id={`${id}-long`}>
          That is {trimmed.length} characters; 4000 fit. Read it in two pieces.
        </p>
      )}
      <button type="submit" className={first ? "main wide" : "wide"} disabled={trimmed === "" || tooLong}>
        Read it
      </button>
    </form>
  );
}
