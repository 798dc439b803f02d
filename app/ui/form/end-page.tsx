import type { View } from "./view.ts";
import { dayWords } from "../../text/moment.ts";
import { StopBox } from "./stop-box.tsx";
import { PageTitle } from "./page-title.tsx";

/** What happens next, and what to do about the car until then. */
export function EndPage({
  view,
  onMore,
  onWords,
}: {
  readonly view: View;
  readonly onMore: () => void;
  readonly onWords: () => void;
}) {
  const { advice } = view;
  return (
    <>
      <PageTitle>Thank you. The workshop has your answers.</PageTitle>
      {advice?.stop === true && <StopBox advice={advice} />}
      <h2>What happens next</h2>
      <p>
        Somebody at the workshop reads what you said and gets in touch with you. Nobody has seen the car yet,
        so nobody can say what is wrong with it, or that nothing is.
      </p>
      {advice !== null && !advice.stop && <p>{advice.say}</p>}
      {advice !== null && (
        <>
          <p>If you are out with it, stop at once, clear of the traffic, and have it fetched if:</p>
          <ul>
            {advice.stopIf.map((sign) => (
              <li key={sign}>{sign}</li>
            ))}
          </ul>
        </>
      )}
      <p>
        You can close this page. The same link works until {dayWords(view.expiresAt)} if there is more to say.
      </p>
      <button type="button" className="form-choice" onClick={onWords}>
        Say something more
      </button>
      <button type="button" className="form-choice" onClick={onMore}>
        Send a photo
      </button>
    </>
  );
}
