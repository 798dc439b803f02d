"use client";
import { useRef, useState } from "react";
import { importCase } from "../../../lib/case/import.ts";
import { addEntries, entriesOfCase } from "../../store/case-database.ts";
import { caseChanged } from "../../store/case-news.ts";
import { wakeSync } from "../../sync/sync.ts";
import { messageOf } from "../../text/message-of.ts";

/** Takes in a saved copy of a case; entries that are here already are left as they are. */
async function takeIn(file: File): Promise<number> {
  const { caseId, entries } = importCase(await file.text());
  const here = new Set((await entriesOfCase(caseId)).map((entry) => entry.id));
  const missing = entries.filter((entry) => !here.has(entry.id));
  await addEntries(missing);
  caseChanged(caseId);
  wakeSync();
  return missing.length;
}

/** Opens a copy of a case from a file. */
export function CaseFileButtons({ onTaken }: { readonly onTaken: () => void }) {
  const input = useRef<HTMLInputElement>(null);
  const [news, setNews] = useState<{ readonly bad: boolean; readonly text: string }>();
  return (
    <>
      <input
        ref={input}
        type="file"
        accept="application/json,.json"
        className="hidden"
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = "";
          if (file === undefined) return;
          takeIn(file).then(
            (count) => {
              setNews({
                bad: false,
                text: count === 0 ? "All of it was here already." : `${count} entries taken in.`,
              });
              onTaken();
            },
            (error: unknown) => setNews({ bad: true, text: messageOf(error) }),
          );
        }}
      />
      <button type="button" onClick={() => input.current?.click()}>
        Open a saved copy
      </button>
      <p role="status" className={news?.bad === true ? "trouble" : undefined}>
        {news?.text}
      </p>
    </>
  );
}
