"use client";
import Link from "next/link";
import { useEffect, useState } from "react";
import { unsentOf } from "../../store/unsent-of.ts";
import { type Ended, endedSession } from "../../sync/settle-person.ts";
import { useSync } from "../../sync/use-sync.ts";
import { enterAs } from "./enter-as.ts";
import { FormField } from "./form-field.tsx";
import { PasswordField } from "./password-field.tsx";
import { Failed } from "./failed.tsx";
import { TitledSheet } from "../titled-sheet.tsx";
import { PeopleForm } from "./people-form.tsx";
import { useRequest } from "./use-request.ts";

/** Signing in with the account that the owner made. */
export function SignInScreen() {
  const { standing, me } = useSync();
  return (
    <TitledSheet title="Sign in">
      <SessionEnded />
      {standing.is === "no-server" && (
        <p className="notice">There is no workshop server behind this page, so nobody needs to sign in.</p>
      )}
      {me?.local === true && (
        <p className="notice">
          No account has been made yet, and on this computer none is needed.{" "}
          <Link href="/set-up">Make the first account</Link> when others are to work with it.
        </p>
      )}
      {standing.is === "owner-needed" && (
        <p className="notice">
          This workshop has no account yet. <Link href="/set-up">Make the first account</Link>, the
          owner&apos;s.
        </p>
      )}
      {me?.person !== undefined && (
        <p className="notice">
          {me.person.name} is signed in. <Link href="/">To the cases</Link>
        </p>
      )}
      <SignInForm />
      <p className="small soft">
        Forgotten the password? The owner can give you a new one. What you entered on this device stays here
        meanwhile.
      </p>
    </TitledSheet>
  );
}

function SignInForm() {
  const [email, setEmail] = useState("");
  const [password, setPassword] = useState("");
  const { busy, failed, fields, send } = useRequest();
  const signIn = async () => {
    const body = { email: email.trim(), password };
    const reply = await send({ method: "POST", path: "/api/v1/session", body });
    if (reply !== undefined) enterAs(reply.json);
  };
  return (
    <PeopleForm onSend={() => void signIn()}>
      <FormField
        label="E-mail address"
        name="email"
        type="email"
        autoComplete="username"
        most={254}
        value={email}
        problem={fields.email}
        onChange={setEmail}
      />
      <PasswordField
        label="Password"
        name="password"
        value={password}
        problem={fields.password}
        onChange={setPassword}
      />
      <Failed words={failed} />
      <button type="submit" className="main wide" disabled={busy}>
        {busy ? "Signing in ..." : "Sign in"}
      </button>
    </PeopleForm>
  );
}

/** Says why somebody is here who did not sign out, and that nothing is lost. */
function SessionEnded() {
  const [ended, setEnded] = useState<Ended & { readonly unsent: number }>();
  useEffect(() => {
    const person = endedSession();
    if (person === undefined) return;
    unsentOf(person).then(
      (unsent) => setEnded({ ...person, unsent }),
      () => setEnded({ ...person, unsent: 0 }),
    );
  }, []);
  if (ended === undefined) return null;
  return (
    <p className="notice" role="status">
      The session of {ended.name} has ended, so their cases are put away on this device. Nothing is lost
      {ended.unsent > 0 &&
        `: ${ended.unsent === 1 ? "1 entry that waits" : `${ended.unsent} entries that wait`} for the server will go out`}{" "}
      when {ended.name} signs in again.
    </p>
  );
}
