"use client";
import { useEffect } from "react";
import type { CaseInList } from "../store/use-cases.ts";
import type { WantedRelease } from "./find-release.ts";
import { keepForCase, locateRelease } from "./release-text.ts";

/** Keeps the releases of these cases on this device, so that each can be opened without a network: one after the other. */
export function useReleasesKept(cases: readonly CaseInList[] | undefined): void {
  const wanted = JSON.stringify([...new Set(cases?.map(({ state }) => state.release))].sort());
  useEffect(() => {
    let gone = false;
    void (async () => {
      for (const release of JSON.parse(wanted) as string[]) {
        if (gone) return;
        // What cannot be had now is tried again at the next visit, and missed only when its case is opened.
        await keep({ release }).catch(() => undefined);
      }
    })();
    return () => {
      gone = true;
    };
  }, [wanted]);
}

async function keep(wanted: WantedRelease): Promise<void> {
  const name = await locateRelease(wanted);
  if (name !== undefined) await keepForCase(name);
}
