"use client";
import { useEffect, useMemo, useState } from "react";
import type { Entry } from "../../../lib/case/entries.ts";
import { foldCase } from "../../../lib/case/fold.ts";
import { ReleaseInUse, useReleaseOfCase } from "../../knowledge/use-knowledge.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readPulled } from "../../sync/meaning.ts";
import { readReply } from "../../sync/read-reply.ts";
import { SharedReply } from "./links.ts";
import { SharedSheet } from "./shared-sheet.tsx";

type Shown =
  | { readonly is: "looking" }
  | { readonly is: "open"; readonly entries: readonly Entry[] }
  | { readonly is: "shut"; readonly title: string; readonly text: string };

/** The one case that a link opens, to read. The secret stands behind the # of the address and goes out in a header. */
export function SharedScreen() {
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

  const entries = shown.is === "open" ? shown.entries : undefined;
  const release = useReleaseOfCase(useMemo(() => entries && foldCase(entries), [entries]));
  if (entries !== undefined && release.is === "ready")
    return (
      <ReleaseInUse key={release.value.sha256} value={release.value}>
        <SharedSheet knowledge={release.value.knowledge} entries={entries} />
      </ReleaseInUse>
    );
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
        ) : release.is === "missing" ? (
          <>
            <h1>Knowledge {release.version} is not here</h1>
            <p>
              This case is weighed with it. {release.reason ?? "Neither this device nor the server has it."}{" "}
              Load the page again later, or ask the workshop.
            </p>
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
  const shared = readReply(reply, SharedReply);
  if (shared !== undefined) {
    const { entries } = readPulled(shared.entries.map((entry, index) => ({ seq: index + 1, entry })));
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
