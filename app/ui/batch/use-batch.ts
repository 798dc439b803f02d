"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { ProposeOptions } from "../../../lib/engine/index.ts";
import type { Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { useDraft } from "../../store/use-draft.ts";

/** A list of checks to make in one set-up, fixed once it is begun: it must not change under the finger. */
export interface BatchList {
  readonly setUp: string;
  readonly setUpMinutes: number;
  readonly checks: readonly { readonly id: string; readonly minutes: number }[];
}

export interface BatchOnScreen {
  /** The list worth making now; undefined when none is, or while it is being worked out. */
  readonly offered: BatchList | undefined;
  /** The list that was begun. */
  readonly begun: BatchList | undefined;
  readonly busy: boolean;
  readonly isDone: (check: string) => boolean;
  /** Check of the begun list that comes after this one and is not done. */
  readonly after: (check: string | undefined) => string | undefined;
  readonly begin: (list: BatchList) => void;
  readonly end: () => void;
}

/** The handful of checks that are worth making before the car is moved again; a begun list outlasts the page. */
export function useBatch(
  situation: Situation,
  state: CaseState,
  options: ProposeOptions,
  ready: boolean,
): BatchOnScreen {
  const [draft, setDraft] = useDraft(`${state.caseId}/batch`);
  const begun = readList(draft);
  const key = ready && begun === undefined ? JSON.stringify([situation, options]) : undefined;
  const batch = useAnswer("batch", { ...situation, options }, key);
  const { value } = batch;
  const isDone = (check: string): boolean =>
    state.answers.some((a) => a.check === check) || state.notPossible.some((n) => n.check === check);
  return {
    offered:
      value === undefined || !batch.ok
        ? undefined
        : {
            setUp: value.setUp,
            setUpMinutes: value.setUpMinutes,
            checks: value.checks.map(({ check: { id, minutes } }) => ({ id, minutes })),
          },
    begun,
    busy: batch.busy,
    isDone,
    after: (check) => {
      const ids = begun?.checks.map(({ id }) => id) ?? [];
      const at = check === undefined ? -1 : ids.indexOf(check);
      return [...ids.slice(at + 1), ...ids.slice(0, at + 1)].find((id) => id !== check && !isDone(id));
    },
    begin: (list) => setDraft(JSON.stringify(list)),
    end: () => setDraft(""),
  };
}

/** A begun list from its draft; anything odd is no list. */
function readList(draft: string): BatchList | undefined {
  if (draft === "") return undefined;
  try {
    const { setUp, setUpMinutes, checks } = JSON.parse(draft) as Partial<BatchList>;
    const whole =
      typeof setUp === "string" &&
      typeof setUpMinutes === "number" &&
      Array.isArray(checks) &&
      checks.length > 0 &&
      checks.every((c) => typeof c?.id === "string" && typeof c.minutes === "number");
    return whole ? { setUp, setUpMinutes, checks } : undefined;
  } catch {
    return undefined;
  }
}
