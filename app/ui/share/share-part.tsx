"use client";
import { useState } from "react";
import { momentWords } from "../../text/moment.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { Failed } from "../people/failed.tsx";
import { NewLink } from "./new-link.tsx";
import { useLinks, useMayShare } from "./use-links.ts";
import { WorkingLinks } from "./working-links.tsx";

const DAYS = [
  { value: "1", name: "1 day" },
  { value: "7", name: "7 days" },
  { value: "30", name: "30 days" },
  { value: "90", name: "90 days" },
] as const;

/** Links by which somebody outside the workshop reads this one case; nothing where none can be made. */
export function SharePart({ caseId }: { readonly caseId: string }) {
  if (!useMayShare()) return null;
  return (
    <Fold title="Let somebody outside read this case">
      <Links caseId={caseId} />
    </Fold>
  );
}

function Links({ caseId }: { readonly caseId: string }) {
  const [days, setDays] = useState<(typeof DAYS)[number]["value"]>("7");
  const held = useLinks(caseId, "read");
  const { trouble, busy, failed, made } = held;
  if (trouble !== undefined) return <p className="notice">{trouble}</p>;
  return (
    <>
      <p className="small soft">
        Whoever has the link reads this case as it stands then, the customer&apos;s name included, without an
        account. They can change nothing and see no other case.
      </p>
      <div className="one-column">
        <Choice id="share-days" label="The link works for" value={days} options={DAYS} onChange={setDays} />
        <button type="button" disabled={busy} onClick={() => void held.make({ days: Number(days) })}>
          Make a link
        </button>
      </div>
      <Failed words={failed} />
      {made !== undefined && <NewLink made={made} />}
      <WorkingLinks held={held} words={(link) => `Made ${momentWords(link.madeAt)}`} />
    </>
  );
}
