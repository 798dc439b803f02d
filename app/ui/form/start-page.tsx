import type { View } from "./view.ts";
import { dayWords } from "../../text/moment.ts";
import { PageTitle } from "./page-title.tsx";

/** What this is, from whom, and how long it takes. */
export function StartPage({ view, onStart }: { readonly view: View; readonly onStart: () => void }) {
  return (
    <>
      <PageTitle>Questions about {view.car === "" ? "your car" : `your ${view.car}`}</PageTitle>
      {view.invented && (
        <p className="invented">
          <strong>Invented case.</strong> No real car, customer or workshop.
        </p>
      )}
      {view.words !== null && <p className="told">{view.words}</p>}
      <p>
        The workshop asks you a few short questions, {view.most} at most. Pick the answer that fits;
        &ldquo;Don&apos;t know&rdquo; is always a good answer.
      </p>
      <p>You can go back at any time. The workshop sees each answer as soon as you give it.</p>
      <button type="button" className="main form-choice" onClick={onStart}>
        Start
      </button>
      <p className="small soft">
        No account is needed. The link works until {dayWords(view.expiresAt)}. Do not try anything out while
        you drive.
      </p>
    </>
  );
}
