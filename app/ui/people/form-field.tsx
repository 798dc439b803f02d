"use client";
import { useId } from "react";

/** A labelled field of a form, with a hint and with what is wrong with it beside it. */
export function FormField({
  label,
  name,
  type = "text",
  autoComplete,
  value,
  hint,
  problem,
  most,
  disabled = false,
  onChange,
}: {
  readonly label: string;
  readonly name: string;
  readonly type?: "text" | "email" | "password";
  readonly autoComplete: string;
  readonly value: string;
  readonly hint?: string;
  readonly problem?: string | undefined;
  readonly most: number;
  readonly disabled?: boolean;
  readonly onChange: (value: string) => void;
}) {
  const id = useId();
  const said = [hint !== undefined && `${id}-hint`, problem !== undefined && `${id}-problem`].filter(Boolean);
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      {hint !== undefined && (
        <p className="small soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <input
        id={id}
        name={name}
        type={type}
        autoComplete={autoComplete}
        autoCapitalize={type === "text" && name === "name" ? "words" : "none"}
        spellCheck={false}
        maxLength={most}
        required
        value={value}
        disabled={disabled}
        aria-invalid={problem !== undefined}
        aria-describedby={said.length > 0 ? said.join(" ") : undefined}
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
