"use client";

/** A labelled field for a figure, with its unit and what is wrong with it. */
export function TypedField({
  id,
  label,
  unit,
  value,
  problem,
  disabled = false,
  text = false,
  onChange,
}: {
  readonly id: string;
  readonly label: string;
  readonly unit?: string;
  readonly value: string;
  readonly problem?: string | undefined;
  readonly disabled?: boolean;
  /** Takes letters too. */
  readonly text?: boolean;
  readonly onChange: (value: string) => void;
}) {
  return (
    <div>
      <label htmlFor={id}>
        {label} {unit !== undefined && <span className="soft">({unit})</span>}
      </label>
      <input
        id={id}
        inputMode={text ? "text" : "decimal"}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        maxLength={80}
        value={value}
        disabled={disabled}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      />
      {problem !== undefined && (
        <p className="trouble small" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}
