"use client";
import { useMemo, useSyncExternalStore } from "react";

/** The case that was on the screen last in this tab. */
interface CaseInHand {
  readonly id: string;
  readonly name: string;
}

const KEY = "cornerwise/case-in-hand";

/** Notes which case is on the screen, so that pages to be read can lead back to it. */
export function takeInHand(held: CaseInHand): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(held));
  } catch {
    // Without storage there is no way back but the browser's own.
  }
}

/** No case is on the screen any more. */
export function putDown(): void {
  try {
    sessionStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}

/** The case that was left to read a page; undefined when none was. */
export function useCaseInHand(): CaseInHand | undefined {
  const text = useSyncExternalStore(never, read, nothing);
  return useMemo(() => (text === null ? undefined : (JSON.parse(text) as CaseInHand)), [text]);
}

/** While a page is read, no case is taken in hand in the same tab. */
const never = () => () => undefined;
const nothing = () => null;

function read(): string | null {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return null;
  }
}
