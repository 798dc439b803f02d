"use client";
import { useState } from "react";
import { importCase } from "../../../lib/case/import.ts";
import { addEntries, entriesOfCase } from "../../store/case-database.ts";
import { caseChanged } from "../../store/case-news.ts";
import { wakeSync } from "../../sync/sync.ts";
import { messageOf } from "../../text/message-of.ts";
import { FileButton } from "../file-button.tsx";

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
  const [news, setNews] = useState<{ readonly bad: boolean; readonly text: string }>();
  return (
    <>
      <FileButton
        label="Open a saved copy"
        accept="application/json,.json"
        onFile={(file) =>
          void takeIn(file).then(
            (count) => {
              setNews({
                bad: false,
                text: count === 0 ? "All of it was here already." : `${count} entries taken in.`,
              });
              onTaken();
            },
            (error: unknown) => setNews({ bad: true, text: messageOf(error) }),
          )
        }
      />
      <p role="status" className={news?.bad === true ? "trouble" : undefined}>
        {news?.text}
      </p>
    </>
  );
}
