"use client";
import { PageTitle } from "./page-title.tsx";

const LONGEST = 4000;

/** What the customer noticed, in their own words. */
export function WordsPage({
  words,
  onWords,
  sending,
  onSend,
  onSkip,
  onBack,
}: {
  readonly words: string;
  readonly onWords: (text: string) => void;
  readonly sending: boolean;
  readonly onSend: (text: string) => Promise<void>;
  readonly onSkip: () => void;
  readonly onBack: () => void;
}) {
  const trimmed = words.trim();
  return (
    <form
      method="post"
      onSubmit={(event) => {
        event.preventDefault();
        if (trimmed !== "") void onSend(trimmed);
      }}
    >
      <PageTitle>
        <label htmlFor="form-words">What have you noticed?</label>
      </PageTitle>
      <p id="form-words-help">
        In your own words: what you hear or feel, when it comes, since when, and what was done to the car
        lately.
      </p>
      <textarea
        id="form-words"
        aria-describedby="form-words-help"
        rows={6}
        maxLength={LONGEST}
        value={words}
        disabled={sending}
        onChange={(event) => onWords(event.target.value)}
      />
      <button type="submit" className="main form-choice" disabled={sending || trimmed === ""}>
        Send and go on
      </button>
      {trimmed === "" && (
        <button type="button" className="form-choice" disabled={sending} onClick={onSkip}>
          Go on without
        </button>
      )}
      <button type="button" className="plain form-back" disabled={sending} onClick={onBack}>
        Back
      </button>
    </form>
  );
}
