"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { nameOfCheck, nameOfSetUp, capital } from "../../text/names.ts";
import type { BatchList, BatchOnScreen } from "./use-batch.ts";

/** Checks to make in one go, before the car is moved again. */
export function BatchChecks({
  knowledge,
  batch,
  open,
  onOpen,
}: {
  readonly knowledge: Knowledge;
  readonly batch: BatchOnScreen;
  /** Check whose card is open. */
  readonly open: string | undefined;
  readonly onOpen: (id: string | undefined) => void;
}) {
  const list = batch.begun ?? batch.offered;
  if (list === undefined || (batch.begun === undefined && list.checks.length < 2)) return null;
  const done = list.checks.filter(({ id }) => batch.isDone(id)).length;
  const all = done === list.checks.length;
  const start = (id: string) => {
    if (batch.begun === undefined) batch.begin(list);
    onOpen(id);
  };
  return (
    <section className="batch" aria-labelledby="batch-title">
      <h3 id="batch-title">In one go: car {nameOfSetUp(knowledge, list.setUp)}</h3>
      <p className="small">{sharedWords(list)}</p>
      <ol className="plain-list">
        {list.checks.map(({ id, minutes }) => (
          <li key={id}>
            <button
              type="button"
              className="line-button"
              aria-current={id === open ? "step" : undefined}
              onClick={() => start(id)}
            >
              <span>{capital(nameOfCheck(knowledge, id))}</span>
              <span className="small soft">
                {minutesWords(minutes)}
                {batch.isDone(id) && <strong> - done</strong>}
                {id === open && " - open above"}
              </span>
            </button>
          </li>
        ))}
      </ol>
      {batch.begun !== undefined && (
        <div className="row spread">
          <p className="small" role="status">
            {done} of {list.checks.length} done.
            {all && " The list is through; the car may be moved."}
          </p>
          <button
            type="button"
            onClick={() => {
              batch.end();
              onOpen(undefined);
            }}
          >
            {all ? "Close the list" : "Leave the list"}
          </button>
        </div>
      )}
    </section>
  );
}

/** How the minutes of setting up are shared. */
function sharedWords({ setUpMinutes, checks }: BatchList): string {
  const own = checks.reduce((sum, { minutes }) => sum + minutes, 0);
  if (setUpMinutes === 0)
    return `The car stands so already: ${minutesWords(own)} for all ${checks.length}, no time to set up.`;
  return `${minutesWords(setUpMinutes)} to set up, once for all ${checks.length} (${minutesWords(
    setUpMinutes / checks.length,
  )} each), and ${minutesWords(own)} of checks: ${minutesWords(setUpMinutes + own)} together.`;
}
