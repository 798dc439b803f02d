"use client";
import { useEffect, useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { checkLine } from "../check/other-checks.tsx";
import { goToPart } from "../sheet-part.tsx";
import type { NextStepsOnScreen } from "./use-next-steps.ts";

/** Whether the answer buttons are on the screen. */
function useInView(id: string, key: string | undefined): boolean {
  const [inView, setInView] = useState(false);
  useEffect(() => {
    const target = document.getElementById(id);
    if (target === null || key === undefined) return;
    const observer = new IntersectionObserver(([entry]) => setInView(entry?.isIntersecting ?? false), {
      rootMargin: "0px 0px -96px 0px",
    });
    observer.observe(target);
    return () => {
      observer.disconnect();
      setInView(false);
    };
  }, [id, key]);
  return inView;
}

interface BarAction {
  readonly words: string;
  readonly detail?: string;
  readonly go: () => void;
}

/** What to do next, at the thumb. */
export function NextBar({
  knowledge,
  state,
  told,
  next,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly told: boolean;
  readonly next: NextStepsOnScreen;
}) {
  const cardInView = useInView("open-check", next.open?.id);
  const resultsInView = useInView("results", next.open?.id);
  const checking = told && state.verdict === undefined && next.open !== undefined;
  // With the answer buttons at hand there is nothing to go to.
  if (checking && resultsInView) return null;
  const action = nextAction(knowledge, state, told, next, cardInView);
  return (
    <nav className="next-bar" aria-label="Next">
      {action === undefined ? (
        <p role="status">Working it out ...</p>
      ) : (
        <button type="button" className="main" onClick={action.go}>
          <span className="next-words">{action.words}</span>
          {action.detail !== undefined && <span className="next-detail number">{action.detail}</span>}
        </button>
      )}
    </nav>
  );
}

function nextAction(
  knowledge: Knowledge,
  state: CaseState,
  told: boolean,
  next: NextStepsOnScreen,
  reading: boolean,
): BarAction | undefined {
  if (state.verdict !== undefined) return { words: "Verdict given: job card", go: () => goToPart("verdict") };
  if (!told) return { words: "Next: say what is wrong", go: goToComplaint };
  if (next.stop === undefined) return undefined;
  const ended = next.stop.kind !== "check-on" && !next.picked;
  const { decision } = next;
  if (!ended && !next.picked && decision !== undefined && !next.deciding) {
    if (decision.kind === "repair" && decision.sure)
      return { words: "Next: give the verdict", go: () => goToPart("verdict") };
    if (decision.kind === "repair" || decision.kind === "refer")
      return { words: "Next: choose a repair, or refer it", go: () => goToPart("choices") };
  }
  if (ended || next.open === undefined)
    return { words: "Next: give the verdict", go: () => goToPart("verdict") };
  if (reading)
    return {
      words: "Give the result",
      go: () => document.getElementById("results")?.scrollIntoView({ block: "center" }),
    };
  return {
    words: `Next: ${checkLine(knowledge, next.open)}`,
    detail: minutesWords(next.open.minutes + next.open.setUpMinutes),
    go: () => goToPart("next"),
  };
}

/** To what was read and waits to be taken, or to the complaint. */
function goToComplaint(): void {
  const take = document.querySelector<HTMLElement>("#proposals button");
  if (take === null) goToPart("complaint");
  else {
    take.focus({ preventScroll: true });
    take.scrollIntoView({ block: "center" });
  }
}
