"use client";
import { useState } from "react";
import { newPasswordProblem, PasswordField } from "./password-field.tsx";
import { Failed } from "./failed.tsx";
import { PeopleForm } from "./people-form.tsx";
import { useRequest } from "./use-request.ts";

/** Changes the own password; every other session ends with it. */
export function ChangePassword({ name }: { readonly name: string }) {
  const [current, setCurrent] = useState("");
  const [next, setNext] = useState("");
  const [done, setDone] = useState(false);
  const { busy, failed, fields, send, refuse } = useRequest();
  const change = async () => {
    setDone(false);
    const problem = newPasswordProblem(next);
    if (problem !== undefined) return refuse({ next: problem });
    const reply = await send({ method: "PUT", path: "/api/v1/password", body: { current, next } });
    if (reply === undefined) return;
    setCurrent("");
    setNext("");
    setDone(true);
  };
  return (
    <PeopleForm onSend={() => void change()}>
      {/* Password managers look for whose password it is. */}
      <input type="text" name="username" autoComplete="username" value={name} readOnly hidden />
      <PasswordField
        label="Password now"
        name="current"
        value={current}
        problem={fields.current}
        onChange={setCurrent}
      />
      <PasswordField
        label="New password"
        name="next"
        fresh
        value={next}
        problem={fields.next}
        onChange={setNext}
      />
      <Failed words={failed} />
      <button type="submit" disabled={busy}>
        {busy ? "Changing it ..." : "Change the password"}
      </button>
      <p role="status">{done && "Changed. Every other device has been signed out."}</p>
    </PeopleForm>
  );
}
