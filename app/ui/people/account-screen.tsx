"use client";
import Link from "next/link";
import { pagePerson, rememberPerson } from "../../store/person-here.ts";
import { roleMay } from "../../text/role-words.ts";
import { useSync } from "../../sync/use-sync.ts";
import { SheetPart } from "../sheet-part.tsx";
import { ChangePassword } from "./change-password.tsx";
import { TitledSheet } from "../titled-sheet.tsx";
import { SignOut } from "./sign-out.tsx";

/** Who is signed in, and what they may do about it. */
export function AccountScreen() {
  const { standing, me } = useSync();
  const person = me?.person;
  return (
    <TitledSheet title="Your account">
      {standing.is === "no-server" && (
        <p className="notice">
          There is no workshop server behind this page. Cases are kept on this device only, and nobody needs
          an account.
        </p>
      )}
      {me === undefined && standing.is !== "no-server" && (
        <p role="status">
          {standing.is === "away"
            ? "The workshop's server does not answer now. Accounts can be looked at when it does."
            : "Asking the server ..."}
        </p>
      )}
      {me?.local === true && <NoAccounts />}
      {me !== undefined && person === undefined && !me.local && (
        <p className="row">
          {me.ownerNeeded ? (
            <Link className="button main" href="/set-up">
              Make the first account
            </Link>
          ) : (
            <Link className="button main" href="/sign-in">
              Sign in
            </Link>
          )}
        </p>
      )}
      {person !== undefined && (
        <>
          <p className="lead">
            {person.name}, {person.role}: {roleMay(person.role)}.
          </p>
          {person.role === "owner" && (
            <p className="row">
              <Link className="button" href="/people">
                People of the workshop
              </Link>
            </p>
          )}
          <SheetPart id="sign-out" title="Sign out">
            <SignOut onDone={() => leave()} />
          </SheetPart>
          <SheetPart id="password" title="Change the password">
            <ChangePassword name={person.name} />
          </SheetPart>
        </>
      )}
    </TitledSheet>
  );
}

function NoAccounts() {
  return (
    <>
      <p>
        Nobody has an account, and on this computer none is needed: whoever sits here sees every case. Other
        devices are let in once there are accounts.
      </p>
      <p className="row">
        <Link className="button" href="/set-up">
          Make the first account
        </Link>
      </p>
    </>
  );
}

/** Puts the cases of the person away; they stay on the device until the person signs in again. */
function leave(): void {
  if (pagePerson() !== undefined) rememberPerson(undefined);
  window.location.assign("/sign-in");
}
