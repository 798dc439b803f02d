"use client";
import { useId } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKept } from "../../store/use-kept.ts";
import type { Settings } from "../../store/use-settings.ts";
import { isMissing } from "../../text/tools.ts";
import { Fold } from "../fold.tsx";
import type { CheckProps } from "./check-props.ts";

/** A reason that takes one tap: it puts this check aside, or, with `change`, every check that needs the same. */
interface Reason {
  readonly words: string;
  readonly change?: Partial<Settings>;
}

/** Puts a check aside, with the reason; what is missing altogether is noted once for all checks. */
export function CannotBeDone({
  knowledge,
  state,
  proposed,
  settings,
  onSettings,
  append,
  onDone,
}: CheckProps) {
  const [reason, setReason] = useKept(`${state.caseId}/put-aside/${proposed.id}`, "");
  const id = useId();
  const already = state.notPossible.some((n) => n.check === proposed.id);
  const aside = (words: string) => {
    append({ kind: "not-possible", check: proposed.id, reason: words.slice(0, 200) });
    setReason("");
    onDone();
  };
  return (
    <Fold title="Cannot be done" openAtFirst={reason !== ""}>
      <div className="row" role="group" aria-label="Why not?">
        {reasonsOf(knowledge, proposed, settings).map(({ words, change }) => (
          <button
            key={words}
            type="button"
            onClick={() => {
              if (change === undefined) aside(words);
              else {
                onSettings(change);
                onDone();
              }
            }}
          >
            {words}
          </button>
        ))}
      </div>
      <p className="small soft">
        What is not here is left out of every check until you say that it is back, above under who does the
        checks.
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          aside(reason.trim());
        }}
      >
        <label htmlFor={id}>Another reason</label>
        <input id={id} value={reason} maxLength={200} onChange={(event) => setReason(event.target.value)} />
        <button type="submit" className="wide">
          {already ? "Note it again" : "Put this check aside"}
        </button>
      </form>
    </Fold>
  );
}

function reasonsOf(
  knowledge: Knowledge,
  { check, setUp }: CheckProps["proposed"],
  { asker, helper, missingTools }: Settings,
): Reason[] {
  const needs = knowledge.setUps.setUps.find((s) => s.id === setUp)?.needs;
  const tools = check?.tools.filter((tool) => !isMissing(tool, missingTools)) ?? [];
  return [
    { words: "Seized or rusted solid" },
    { words: "Cannot be reached" },
    ...(check?.helper === true && helper ? [{ words: "No helper here", change: { helper: false } }] : []),
    ...(needs === "lift" && asker === "technician-lift"
      ? [{ words: "No lift here", change: { asker: "technician" } } as const]
      : []),
    ...tools.map((tool) => ({
      words: `Not here: ${tool}`,
      change: { missingTools: [...missingTools, tool] },
    })),
  ];
}
