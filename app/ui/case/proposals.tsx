"use client";
import { useEffect, useRef } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Proposal } from "../../../lib/words/index.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { capital } from "../../text/names.ts";
import type { Settings } from "../../store/use-settings.ts";
import { Fold } from "../fold.tsx";
import { MarkedText } from "./marked-text.tsx";
import { TrafficPick } from "./traffic-pick.tsx";

function accepted(proposal: Proposal): EntryBody {
  return {
    kind: "answered",
    finding: proposal.finding,
    state: proposal.state,
    ...(proposal.level !== undefined && { level: proposal.level }),
    how: "report",
    words: proposal.words.slice(0, 1000),
  };
}

/** What was read out of the customer's words and waits for a person to take it or not. */
export function Proposals({
  state,
  settings,
  onSettings,
  append,
  onJudged,
}: {
  readonly state: CaseState;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  /** The last one was taken or refused; the keyboard goes on there. */
  readonly onJudged?: (() => void) | undefined;
}) {
  const list = useRef<HTMLDivElement>(null);
  /** Line that was just judged: its buttons go with it, and the keyboard must not. */
  const judged = useRef<number | undefined>(undefined);
  const before = useRef(0);
  const text = state.text.join("\n");
  const traffic = settings.traffic === "" ? undefined : settings.traffic;
  const read = useAnswer(
    "read",
    { text, traffic },
    text === "" ? undefined : JSON.stringify([traffic, text]),
  );
  const open = (read.value?.proposals ?? []).filter(
    (p) =>
      !state.answers.some((a) => a.finding === p.finding) &&
      !state.refused.some((r) => r.finding === p.finding && r.words === p.words.slice(0, 1000)),
  );
  const count = text === "" ? 0 : open.length;
  useEffect(() => {
    const at = judged.current;
    const arrived = before.current === 0 && count > 0;
    judged.current = undefined;
    before.current = count;
    // Where judging leads on, what was just read is the next thing to do.
    if (arrived && onJudged !== undefined) list.current?.querySelector("button")?.focus();
    if (at === undefined) return;
    if (count === 0) onJudged?.();
    else
      list.current
        ?.querySelectorAll("li")
        .item(Math.min(at, count - 1))
        .querySelector("button")
        ?.focus();
    // Asked once for each change of the list, whatever stands in the callback by then.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [count]);
  if (text === "") return null;
  const judge = (at: number, ...bodies: readonly EntryBody[]) => {
    judged.current = at;
    append(...bodies);
  };
  const known = read.value !== undefined && !read.busy;
  const quote = (
    <blockquote className="told" aria-label="The customer's words">
      <MarkedText text={text} spans={open.flatMap((p) => p.spans)} />
    </blockquote>
  );
  return (
    <div>
      {known && open.length === 0 ? (
        <Fold title="In the customer's words">{quote}</Fold>
      ) : (
        <>
          <h3 className="told-title">In the customer&apos;s words</h3>
          {quote}
        </>
      )}
      {read.failed !== undefined && !known && (
        <p className="trouble" role="alert">
          The words could not be read ({read.failed}). Tick what was told by hand below.
        </p>
      )}
      {read.busy && <p className="soft">Reading ...</p>}
      {known && read.value.proposals.length === 0 && (
        <p className="notice">
          Nothing in these words is known here. Tick what was told by hand below, or search for it.
        </p>
      )}
      {read.value !== undefined &&
        read.value.sides.length > 0 &&
        (traffic === undefined || open.length > 0) && (
          <TrafficPick sides={read.value.sides} traffic={settings.traffic} onSettings={onSettings} />
        )}
      {open.length > 0 && (
        <div className="proposals" id="proposals" ref={list}>
          <div className="row spread">
            <p>
              <strong>Is this what was meant?</strong> Nothing counts until you take it.
            </p>
            {open.length > 1 && (
              <button type="button" className="main" onClick={() => judge(0, ...open.map(accepted))}>
                Take all {open.length}
              </button>
            )}
          </div>
          <ul className="plain-list">
            {open.map((proposal, at) => (
              <li key={`${proposal.finding}|${proposal.words}`} className="proposal">
                <div>
                  <strong>
                    {proposal.state === "absent" && "Not: "}
                    {proposal.state === "absent" ? proposal.name : capital(proposal.name)}
                  </strong>
                  <p className="small">
                    from <mark>{proposal.words}</mark>
                    {proposal.hedged && " - said with a doubt"}
                  </p>
                </div>
                <div className="row">
                  <button
                    type="button"
                    aria-label={`Take it: ${proposal.name}`}
                    onClick={() => judge(at, accepted(proposal))}
                  >
                    Take it
                  </button>
                  <button
                    type="button"
                    aria-label={`Not meant: ${proposal.name}`}
                    onClick={() =>
                      judge(at, {
                        kind: "refused",
                        finding: proposal.finding,
                        words: proposal.words.slice(0, 1000),
                      })
                    }
                  >
                    Not meant
                  </button>
                </div>
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
