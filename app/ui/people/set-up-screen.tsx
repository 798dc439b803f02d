"use client";
import Link from "next/link";
import { useState } from "react";
import { useSync } from "../../sync/use-sync.ts";
import { enterAs } from "./enter-as.ts";
import { FormField } from "./form-field.tsx";
import { newPasswordProblem, PasswordField } from "./password-field.tsx";
import { Failed } from "./failed.tsx";
import { TitledSheet } from "../titled-sheet.tsx";
import { PeopleForm } from "./people-form.tsx";
import { useRequest } from "./use-request.ts";

/** The first account of a workshop: its owner's. */
export function SetUpScreen() {
  const { standing, me } = useSync();
  return (
    <TitledSheet title="The first account">
      {standing.is === "no-server" ? (
        <p className="notice">
          There is no workshop server behind this page. Cases are kept on this device; accounts need a server.
        </p>
      ) : me === undefined ? (
        <p role="status">
          {standing.is === "away" ? "The workshop's server does not answer now." : "Asking the server ..."}
        </p>
      ) : me.ownerNeeded ? (
        <SetUpForm local={me.local} />
      ) : (
        <p className="notice">
          This workshop has its first account already. <Link href="/sign-in">Sign in</Link>, or ask the owner
          for an account.
        </p>
      )}
    </TitledSheet>
  );
}

function SetUpForm({ local }: { readonly local: boolean }) {
  const [name, setName] = useState("");
  const [email, setEmail] = useState("");
  const [password, setPassword] = useState("");
  const [code, setCode] = useState("");
  const { busy, failed, fields, send, refuse } = useRequest();
  const make = async () => {
    const problem = newPasswordProblem(password);
    if (problem !== undefined) return refuse({ password: problem });
    const body = {
      name: name.trim(),
      email: email.trim(),
      password,
      ...(!local && { setUpCode: code.trim() }),
    };
    const reply = await send({ method: "POST", path: "/api/v1/first-account", body });
    if (reply !== undefined) enterAs(reply.json);
  };
  return (
    <>
      <p>
        Whoever makes it is the owner of the workshop&apos;s accounts: makes accounts for the others, and may
        remove cases for everybody.
      </p>
      {local && (
        <p className="notice">
          From then on this computer asks for a sign-in too. The cases that are on the server stay there.
        </p>
      )}
      <PeopleForm onSend={() => void make()}>
        {!local && (
          <FormField
            label="Set-up code"
            name="setUpCode"
            autoComplete="one-time-code"
            hint="The server shows it on its own console when it starts."
            most={200}
            value={code}
            problem={fields.setUpCode}
            onChange={setCode}
          />
        )}
        <FormField
          label="Your name"
          name="name"
          autoComplete="name"
          hint="Entries are signed with it."
          most={80}
          value={name}
          problem={fields.name}
          onChange={setName}
        />
        <FormField
          label="E-mail address"
          name="email"
          type="email"
          autoComplete="username"
          hint="To sign in with. Nothing is sent to it."
          most={254}
          value={email}
          problem={fields.email}
          onChange={setEmail}
        />
        <PasswordField
          label="Password"
          name="password"
          fresh
          value={password}
          problem={fields.password}
          onChange={setPassword}
        />
        <Failed words={failed} />
        <button type="submit" className="main wide" disabled={busy}>
          {busy ? "Making it ..." : "Make the account and sign in"}
        </button>
      </PeopleForm>
    </>
  );
}
