"use client";
import { useEffect, useState } from "react";
import type { Entry } from "../../../lib/case/entries.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readPulled } from "../../sync/meaning.ts";
import { SharedReply } from "./links.ts";
import { SharedSheet } from "./shared-sheet.tsx";

type Shown =
  | { readonly is: "looking" }
  | { readonly is: "open"; readonly entries: readonly Entry[] }
  | { readonly is: "shut"; readonly title: string; readonly text: string };

/** The one case that a link opens, to read. The secret stands behind the # of the address and goes out in a header. */
export function SharedScreen() {
  const knowledge = useKnowledge();
  const [shown, setShown] = useState<Shown>({ is: "looking" });
  useEffect(() => {
    let gone = false;
    const look = (): void => {
      setShown({ is: "looking" });
      void openShared(window.location.hash.slice(1)).then((now) => !gone && setShown(now));
    };
    look();
    window.addEventListener("hashchange", look);
    return () => {
      gone = true;
      window.removeEventListener("hashchange", look);
    };
  }, []);

  if (shown.is === "open" && knowledge.is === "ready")
    return <SharedSheet knowledge={knowledge.value} entries={shown.entries} />;
  return (
    <>
      <header className="site-head">
        <span className="brand">Cornerwise</span>
      </header>
      <main id="main" className="sheet list-sheet">
        {shown.is === "shut" ? (
          <>
            <h1>{shown.title}</h1>
            <p>{shown.text}</p>
            <button type="button" onClick={() => window.location.reload()}>
              Try again
            </button>
          </>
        ) : knowledge.is === "failed" ? (
          <>
            <h1>The knowledge did not arrive</h1>
            <p>{knowledge.message} Load the page again.</p>
          </>
        ) : (
          <>
            <h1>A case to read</h1>
            <p role="status">Opening the case ...</p>
          </>
        )}
      </main>
    </>
  );
}

async function openShared(token: string): Promise<Shown> {
  if (!/^[A-Za-z0-9_-]{20,100}$/.test(token))
    return {
      is: "shut",
      title: "The link is not whole",
      text: "Its end is missing or was changed on the way. Open it again from where you got it, or ask for it once more.",
    };
  const reply = await serverDoor.ask({ method: "GET", path: "/api/v1/shared", bearer: token });
  const shared = reply.is === "reply" && reply.status === 200 ? SharedReply.safeParse(reply.json) : undefined;
  if (shared?.success === true) {
    const { entries } = readPulled(shared.data.entries.map((entry, index) => ({ seq: index + 1, entry })));
    return { is: "open", entries };
  }
  if (reply.is === "reply" && (reply.status === 401 || reply.status === 410))
    return {
      is: "shut",
      title: "This link opens nothing any more",
      text: "Its time is over, or the workshop has ended it. Ask the workshop for a new one.",
    };
  return { is: "shut", title: "The case could not be opened", text: failureWords(reply) };
}
