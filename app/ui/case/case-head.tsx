import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { momentWords } from "../../text/moment.ts";
import { KeptLine } from "../sync/kept-line.tsx";

/** Whose car it is, and whether the knowledge has changed since the case was opened. */
export function CaseHead({
  knowledge,
  state,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const { version } = knowledge;
  return (
    <div className="case-head">
      <h1>{state.vehicle === "" ? "A car" : state.vehicle}</h1>
      <p className="soft">
        {[state.plate, state.customer].filter((t) => t !== undefined && t !== "").join(", ")}
        {state.openedAt !== undefined && (
          <span className="number"> opened {momentWords(state.openedAt)}</span>
        )}
      </p>
      <KeptLine caseId={state.caseId} />
      {state.invented && (
        <p className="invented">
          <strong>Invented case.</strong> No real car, customer or workshop.
        </p>
      )}
      {state.knowledgeVersion !== undefined && state.knowledgeVersion !== version && (
        <div className="notice">
          <p>
            This case was weighed with knowledge {state.knowledgeVersion}; what stands below comes from{" "}
            {version} and may differ.
          </p>
          <button
            type="button"
            onClick={() => append({ kind: "release-changed", release: version, knowledgeVersion: version })}
          >
            Go on with {version}
          </button>
        </div>
      )}
    </div>
  );
}
