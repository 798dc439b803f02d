import type { CaseState } from "../../../lib/case/case-state.ts";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { momentWords } from "../../text/moment.ts";
import { KeptLine } from "../sync/kept-line.tsx";
import { ChangeRelease } from "./change-release.tsx";
import { WhoHasIt } from "./who-has-it.tsx";

/** Whose car it is, and whether there is newer knowledge than the case is weighed with. */
export function CaseHead({
  release,
  state,
  append,
}: {
  readonly release: OpenRelease;
  readonly state: CaseState;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const { version, sha256, newest } = release;
  return (
    <div className="case-head">
      <h1>{state.vehicle === "" ? "A car" : state.vehicle}</h1>
      <p className="soft">
        {[state.plate, state.customer].filter((t) => t !== undefined && t !== "").join(", ")}
        {state.openedAt !== undefined && (
          <span className="number"> opened {momentWords(state.openedAt)}</span>
        )}
      </p>
      <WhoHasIt state={state} append={append} />
      <KeptLine caseId={state.caseId} />
      {state.invented && (
        <p className="invented">
          <strong>Invented case.</strong> No real car, customer or workshop.
        </p>
      )}
      {newest !== undefined && newest.sha256 !== sha256 && (
        <div className="notice">
          <p>
            This case stays with knowledge {version}, which it was weighed with.{" "}
            {newest.version === version
              ? `${version} has been edited since.`
              : `The newest is ${newest.version}; with it the ranking may differ.`}
          </p>
          <ChangeRelease newest={newest} append={append} />
        </div>
      )}
    </div>
  );
}
