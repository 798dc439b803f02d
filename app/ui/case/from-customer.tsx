import { useMemo } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { saidByForm } from "../../../lib/case/said-by-form.ts";
import { momentWords } from "../../text/moment.ts";
import { PhotoList } from "../photos/photo-list.tsx";
import { SheetPart } from "../sheet-part.tsx";

/** What the customer said by the form of a link, as they said it; nothing when there was none. */
export function FromCustomer({ state }: { readonly state: CaseState }) {
  const said = useMemo(() => saidByForm(state.timeline.map(({ entry }) => entry)), [state]);
  const last = said.at(-1);
  if (last === undefined) return null;
  return (
    <SheetPart id="from-customer" title="From the customer, by the form">
      <div aria-live="polite">
        <ul className="plain-list">
          {said
            .filter(({ kind }) => kind !== "photo")
            .map(({ id, kind, asked, text }) => (
              <li key={id}>
                {kind === "words" ? (
                  <p className="told">{text}</p>
                ) : (
                  <>
                    {asked} <strong>{text}</strong>
                  </>
                )}
              </li>
            ))}
        </ul>
        <PhotoList caseId={state.caseId} photos={state.photos.filter(({ from }) => from !== undefined)} />
        <p className="small soft">Last at {momentWords(last.at)}.</p>
      </div>
    </SheetPart>
  );
}
