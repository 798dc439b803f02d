"use client";
import Link from "next/link";
import { useCallback, useEffect, useState } from "react";
import { type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { useSync } from "../../sync/use-sync.ts";
import { SheetPart } from "../sheet-part.tsx";
import { type Account, AccountsReply } from "./account.ts";
import { AccountLine } from "./account-line.tsx";
import { NewAccount } from "./new-account.tsx";
import { TitledSheet } from "../titled-sheet.tsx";

/** The accounts of the workshop, for its owner. */
export function PeopleScreen() {
  const { standing, me } = useSync();
  const isOwner = me?.person?.role === "owner";
  return (
    <TitledSheet title="People of the workshop">
      {me === undefined && standing.is !== "no-server" && (
        <p role="status">
          {standing.is === "away" ? "The workshop's server does not answer now." : "Asking the server ..."}
        </p>
      )}
      {standing.is === "no-server" && (
        <p className="notice">There is no workshop server behind this page, and so there are no accounts.</p>
      )}
      {me !== undefined && !isOwner && (
        <p className="notice">
          {me.ownerNeeded ? (
            <>
              No account has been made yet. <Link href="/set-up">Make the first one</Link>, the owner&apos;s.
            </>
          ) : me.person === undefined ? (
            <>
              <Link href="/sign-in">Sign in</Link> as the owner to see the accounts.
            </>
          ) : (
            "Only the owner sees and changes accounts."
          )}
        </p>
      )}
      {isOwner && <Accounts own={me.person?.id ?? ""} />}
    </TitledSheet>
  );
}

const askAccounts = (): Promise<Reply> => serverDoor.ask({ method: "GET", path: "/api/v1/accounts" });

function Accounts({ own }: { readonly own: string }) {
  const [accounts, setAccounts] = useState<readonly Account[]>();
  const [failed, setFailed] = useState<string>();
  const show = useCallback((reply: Reply) => {
    const list = readReply(reply, AccountsReply);
    if (list !== undefined) setAccounts(list.accounts);
    setFailed(list === undefined ? failureWords(reply) : undefined);
  }, []);
  const load = useCallback(() => void askAccounts().then(show), [show]);
  useEffect(() => {
    let gone = false;
    void askAccounts().then((reply) => !gone && show(reply));
    return () => {
      gone = true;
    };
  }, [show]);
  return (
    <>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      {accounts === undefined && failed === undefined && <p role="status">Looking ...</p>}
      <ul className="plain-list">
        {(accounts ?? []).map((account) => (
          <AccountLine
            key={account.id}
            account={account}
            isOwn={account.id === own}
            onChanged={(changed) =>
              setAccounts((old) => (old ?? []).map((one) => (one.id === changed.id ? changed : one)))
            }
            onStale={load}
          />
        ))}
      </ul>
      <SheetPart id="new-account" title="A new account">
        <NewAccount onMade={load} />
      </SheetPart>
    </>
  );
}
