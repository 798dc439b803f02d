"use client";
import { useState } from "react";
import { ROLES, type RoleValue, roleMay } from "../../text/role-words.ts";
import { Choice } from "../choice.tsx";
import { FormField } from "./form-field.tsx";
import { newPasswordProblem, PasswordField } from "./password-field.tsx";
import { Failed } from "./failed.tsx";
import { PeopleForm } from "./people-form.tsx";
import { useRequest } from "./use-request.ts";

const EMPTY = { name: "", email: "", password: "" };

/** Makes an account for somebody of the workshop. */
export function NewAccount({ onMade }: { readonly onMade: () => void }) {
  const [form, setForm] = useState(EMPTY);
  const [role, setRole] = useState<RoleValue>("technician");
  const [made, setMade] = useState<string>();
  const { busy, failed, fields, send, refuse } = useRequest();
  const set = (part: Partial<typeof EMPTY>) => setForm((old) => ({ ...old, ...part }));
  const make = async () => {
    setMade(undefined);
    const problem = newPasswordProblem(form.password);
    if (problem !== undefined) return refuse({ password: problem });
    const body = { ...form, name: form.name.trim(), email: form.email.trim(), role };
    if ((await send({ method: "POST", path: "/api/v1/accounts", body })) === undefined) return;
    setMade(body.name);
    setForm(EMPTY);
    onMade();
  };
  return (
    <PeopleForm onSend={() => void make()}>
      <FormField
        label="Name"
        name="name"
        autoComplete="off"
        hint="Their entries are signed with it."
        most={80}
        value={form.name}
        problem={fields.name}
        onChange={(name) => set({ name })}
      />
      <FormField
        label="E-mail address"
        name="email"
        type="email"
        autoComplete="off"
        hint="To sign in with. Nothing is sent to it."
        most={254}
        value={form.email}
        problem={fields.email}
        onChange={(email) => set({ email })}
      />
      <Choice id="new-role" label="Role" value={role} options={ROLES} onChange={setRole} />
      <p className="small soft">{roleMay(role)}</p>
      <PasswordField
        label="First password"
        name="password"
        fresh
        value={form.password}
        problem={fields.password}
        onChange={(password) => set({ password })}
      />
      <Failed words={failed} />
      <button type="submit" disabled={busy}>
        {busy ? "Making it ..." : "Make the account"}
      </button>
      <p role="status">
        {made !== undefined && `Made. Tell ${made} the address and the first password; they change it.`}
      </p>
    </PeopleForm>
  );
}
