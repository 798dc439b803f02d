"use client";
import { useMemo } from "react";
import type { Grounded } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital, nameOfRepair } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { PickList } from "../teach/pick-list.tsx";
import { madeSteps } from "./made-steps.ts";
import { partsOf } from "./suspect-names.ts";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";

/** Orders a part before the verdict, as one would to save a day; a part that is in order was ordered in vain. */
export function OrderPart({
  knowledge,
  grounded,
  attempt,
  work,
}: {
  readonly knowledge: Knowledge;
  readonly grounded: Grounded;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
}) {
  const parts = useMemo(() => partsOf(grounded), [grounded]);
  const ordered = new Set(
    madeSteps(attempt.entries).flatMap((step) => (step.kind === "order" ? [step.repair] : [])),
  );
  return (
    <Fold title="Order a part already">
      <p>Ordered is ordered: it cannot be taken back, and a part that turns out to be in order counts.</p>
      {ordered.size > 0 && (
        <ul>
          {[...ordered].map((repair) => (
            <li key={repair}>{capital(nameOfRepair(knowledge, repair))}</li>
          ))}
        </ul>
      )}
      <PickList label="Look for the part" things={parts}>
        {({ id }) =>
          ordered.has(id) ? (
            <span className="soft">ordered</span>
          ) : (
            <button
              type="button"
              disabled={work.busy}
              onClick={() => void work.send({ kind: "orders", repair: id })}
            >
              Order
            </button>
          )
        }
      </PickList>
    </Fold>
  );
}
