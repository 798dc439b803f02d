import type { CaseState } from "../../../lib/case/case-state.ts";
import { momentWords } from "../../text/moment.ts";

/** Whose car it is. */
export function CaseHead({ state }: { readonly state: CaseState }) {
  return (
    <div className="case-head">
      <h1>{state.vehicle === "" ? "A car" : state.vehicle}</h1>
      <p className="soft">
        {[state.plate, state.customer].filter((t) => t !== undefined && t !== "").join(", ")}
        {state.openedAt !== undefined && (
          <span className="number"> opened {momentWords(state.openedAt)}</span>
        )}
      </p>
      {state.invented && (
        <p className="invented">
          <strong>Invented case.</strong> No real car, customer or workshop.
        </p>
      )}
    </div>
  );
}
