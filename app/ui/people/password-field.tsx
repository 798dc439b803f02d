"use client";
import { useState } from "react";
import { FormField } from "./form-field.tsx";

/** Least characters of a new password; the server asks for the same. */
export const LEAST_PASSWORD = 12;

/** A password that can be looked at while it is typed: with greasy fingers half of the taps go astray. */
export function PasswordField({
  label,
  name,
  fresh = false,
  value,
  problem,
  onChange,
}: {
  readonly label: string;
  readonly name: string;
  /** It is being chosen, not tried. */
  readonly fresh?: boolean;
  readonly value: string;
  readonly problem?: string | undefined;
  readonly onChange: (value: string) => void;
}) {
  const [seen, setSeen] = useState(false);
  return (
    <div>
      <FormField
        label={label}
        name={name}
        type={seen ? "text" : "password"}
        autoComplete={fresh ? "new-password" : "current-password"}
        most={200}
        value={value}
        problem={problem}
        onChange={onChange}
        {...(fresh && {
          hint: `${LEAST_PASSWORD} characters or more. A few words are easier to type than signs.`,
        })}
      />
      <label className="tick">
        <input type="checkbox" checked={seen} onChange={(event) => setSeen(event.target.checked)} />
        Show what is typed
      </label>
    </div>
  );
}

/** What is wrong with a new password, before the server is asked. */
export function newPasswordProblem(password: string): string | undefined {
  const length = [...password.normalize("NFKC")].length;
  return length < LEAST_PASSWORD
    ? `It has ${length} characters; ${LEAST_PASSWORD} are the least.`
    : undefined;
}
