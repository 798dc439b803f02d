"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OpenCase } from "../../store/use-case.ts";
import { capital, nameOfFinding } from "../../text/names.ts";

/** Findings that measured frequencies may be; none counts until a person takes it. */
export function TurningTakeOver({
  knowledge,
  open,
  findings,
  keep,
  onKept,
}: {
  readonly knowledge: Knowledge;
  readonly open: OpenCase;
  readonly findings: readonly string[];
  /** Figures that go into the case along with a finding; undefined when they are there already. */
  readonly keep: CaseState["turning"];
  /** The figures are in the case now. */
  readonly onKept: () => void;
}) {
  const { state, append } = open;
  const figures = keep === undefined ? [] : [{ kind: "turning", ...keep } as const];
  return (
    <>
      {findings.length > 0 && (
        <div className="proposals">
          <p>
            <strong>Is this what was measured?</strong> Nothing counts until you take it.
          </p>
          <ul className="plain-list">
            {findings.map((finding) => {
              const name = nameOfFinding(knowledge, finding);
              const is = state.answers.find((a) => a.finding === finding);
              const taken = is?.state === "present" && is.by === "check";
              return (
                <li key={finding} className="proposal">
                  <div>
                    <strong>{capital(name)}</strong>
                  </div>
                  {taken ? (
                    <span role="status">Taken over into the case</span>
                  ) : (
                    <button
                      type="button"
                      aria-label={`Take it: ${name}`}
                      onClick={() => {
                        append(...figures, { kind: "answered", finding, state: "present", how: "check" });
                        onKept();
                      }}
                    >
                      Take it
                    </button>
                  )}
                </li>
              );
            })}
          </ul>
        </div>
      )}
      {keep === undefined ? (
        <p className="small" role="status">
          These figures are kept in the case.
        </p>
      ) : (
        <button
          type="button"
          className="wide"
          onClick={() => {
            append(...figures);
            onKept();
          }}
        >
          Keep the figures in the case
        </button>
      )}
    </>
  );
}
