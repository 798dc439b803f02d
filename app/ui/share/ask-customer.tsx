"use client";
import { useMemo, useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { type SaidByForm, saidByForm } from "../../../lib/case/said-by-form.ts";
import { momentWords } from "../../text/moment.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { Failed } from "../people/failed.tsx";
import type { CaseLink } from "./links.ts";
import { SendForm } from "./send-form.tsx";
import { useLinks, useMayShare } from "./use-links.ts";
import { WorkingLinks } from "./working-links.tsx";

const DAYS = [
  { value: "1", name: "1 day" },
  { value: "3", name: "3 days" },
  { value: "7", name: "7 days" },
  { value: "14", name: "14 days" },
  { value: "30", name: "30 days" },
] as const;

/** While the customer is at it, how often it is asked whether the form was opened or is done. */
const LOOK_MS = 15_000;

/** A link by which the customer answers a few questions about this car; nothing where none can be made. */
export function AskCustomer({ state }: { readonly state: CaseState }) {
  if (!useMayShare()) return null;
  return (
    <Fold title="Ask the customer by a link">
      <Forms state={state} />
    </Fold>
  );
}

function Forms({ state }: { readonly state: CaseState }) {
  const said = useMemo(() => saidByForm(state.timeline.map(({ entry }) => entry)), [state]);
  const held = useLinks(state.caseId, "customer", LOOK_MS);
  const [days, setDays] = useState<(typeof DAYS)[number]["value"]>("7");
  const [words, setWords] = useState("");
  const { trouble, busy, failed, made } = held;
  if (trouble !== undefined) return <p className="notice">{trouble}</p>;
  const make = () => held.make({ days: Number(days), ...(words.trim() !== "" && { words: words.trim() }) });
  return (
    <>
      <p className="small soft">
        The customer gets a few questions in plain words, one a page, and can send words and photos. They see
        the name of the car and what they said themselves, and nothing else of the case. Their answers come in
        here as they give them.
      </p>
      <div className="one-column">
        <div>
          <label htmlFor="form-says">What the form says first (may be left empty)</label>
          <textarea
            id="form-says"
            className="low"
            rows={2}
            maxLength={1000}
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
        </div>
        <Choice id="form-days" label="The link works for" value={days} options={DAYS} onChange={setDays} />
        <button type="button" disabled={busy} onClick={() => void make()}>
          Make a link for the customer
        </button>
      </div>
      <Failed words={failed} />
      {made !== undefined && <SendForm made={made} vehicle={state.vehicle} />}
      <WorkingLinks
        held={held}
        words={(link) => `Made ${momentWords(link.madeAt)}: ${standingWords(link, said)}`}
      />
    </>
  );
}

/** How far the customer is. */
function standingWords(link: CaseLink, said: readonly SaidByForm[]): string {
  const count = said.filter((one) => one.link === link.id).length;
  const things = count === 1 ? "1 thing said" : `${count} things said`;
  if (link.doneAt !== undefined) return `done, ${things}`;
  if (count > 0) return things;
  return link.openedAt === undefined ? "not opened yet" : "opened, nothing said yet";
}
