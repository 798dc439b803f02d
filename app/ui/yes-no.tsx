"use client";

export type YesNoState = "present" | "absent" | "unknown";

/** One thing to say yes or no to; pressing the pressed one again takes it back to not known. */
export function YesNo({
  name,
  state,
  onChange,
}: {
  readonly name: string;
  readonly state: YesNoState;
  readonly onChange: (state: YesNoState) => void;
}) {
  const button = (value: "present" | "absent", word: string) => (
    <button
      type="button"
      aria-pressed={state === value}
      aria-label={`${name}: ${word}`}
      onClick={() => onChange(state === value ? "unknown" : value)}
    >
      {word}
    </button>
  );
  return (
    <div className="yes-no" role="group" aria-label={name}>
      <span>{name}</span>
      <span className="yes-no-buttons">
        {button("present", "Yes")}
        {button("absent", "No")}
      </span>
    </div>
  );
}
