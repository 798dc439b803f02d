"use client";
import { useState } from "react";
import { pagePerson } from "../../store/person-here.ts";
import { unsentOf } from "../../store/unsent-of.ts";
import { wakeSync } from "../../sync/sync.ts";
import { Failed } from "./failed.tsx";
import { useRequest } from "./use-request.ts";

/** How often, and how many times, it is looked whether the last entries have gone out. */
const LOOK_MS = 250;
const LOOKS = 12;

/** Entries that still wait when the server has had a moment to take them. */
async function unsentAtLast(): Promise<number> {
  wakeSync();
  for (let looks = 0; ; looks++) {
    // Unreadable is no reason to keep somebody signed in.
    const unsent = await unsentOf(pagePerson()).catch(() => 0);
    if (unsent === 0 || looks >= LOOKS) return unsent;
    await new Promise((resolve) => {
      setTimeout(resolve, LOOK_MS);
    });
  }
}

/** The two ways to sign out; with entries that wait for the server it asks once more. */
export function SignOut({ onDone }: { readonly onDone: () => void }) {
  const { busy, failed, send } = useRequest();
  const [asking, setAsking] = useState<{ readonly path: string; readonly unsent: number }>();
  const [sending, setSending] = useState(false);
  const signOut = async (path: string) => {
    const reply = await send({ method: "DELETE", path });
    if (reply !== undefined) onDone();
  };
  const start = async (path: string) => {
    setSending(true);
    const unsent = await unsentAtLast();
    setSending(false);
    if (unsent > 0) setAsking({ path, unsent });
    else await signOut(path);
  };
  return (
    <>
      <Failed words={failed} />
      {asking === undefined ? (
        <p className="row">
          <button type="button" disabled={busy || sending} onClick={() => void start("/api/v1/session")}>
            Sign out here
          </button>
          <button type="button" disabled={busy || sending} onClick={() => void start("/api/v1/sessions")}>
            Sign out on every device
          </button>
          <span role="status">{sending && "Sending what waits ..."}</span>
        </p>
      ) : (
        <div className="notice" role="group" aria-label="Entries that wait">
          <p>
            {asking.unsent === 1 ? "1 entry has" : `${asking.unsent} entries have`} not gone to the server
            yet. Signed out, {asking.unsent === 1 ? "it stays" : "they stay"} on this device, out of sight,
            and {asking.unsent === 1 ? "goes" : "go"} out when you sign in here again.
          </p>
          <p className="row">
            <button type="button" disabled={busy} onClick={() => void signOut(asking.path)}>
              Sign out all the same
            </button>
            <button type="button" onClick={() => setAsking(undefined)}>
              Stay signed in
            </button>
          </p>
        </div>
      )}
      <p className="small soft">
        Your cases are put away on this device when you sign out; whoever signs in next does not see them.
      </p>
    </>
  );
}
