"use client";
import { useCallback, useState } from "react";

/** What stands half-done on a screen, for as long as the app is open in this tab. */
const KEPT = new Map<string, unknown>();

/**
 * State that outlasts leaving the screen to read another one: what is typed, ticked or opened but not yet an entry.
 *
 * A load of the page starts anew; what must outlast that is a draft.
 */
export function useKept<T>(key: string, first: T): readonly [T, (value: T) => void] {
  const [value, setValue] = useState<T>(() => (KEPT.has(key) ? (KEPT.get(key) as T) : first));
  const change = useCallback(
    (next: T) => {
      KEPT.set(key, next);
      setValue(next);
    },
    [key],
  );
  return [value, change];
}

/** What was kept under keys that begin so became an entry, or was given up. */
export function forgetKept(beginning: string): void {
  for (const key of KEPT.keys()) if (key.startsWith(beginning)) KEPT.delete(key);
}
