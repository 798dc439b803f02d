"use client";
import { useEffect } from "react";

const LOCK = "cornerwise/case-open";

/** Says to the other tabs that a case is open in this one, for as long as it is. */
export function useCaseIsOpen(): void {
  useEffect(() => {
    const { locks } = navigator;
    if (locks === undefined) return; // plain http: no version is kept there either
    const leave = new AbortController();
    let end = (): void => undefined;
    const open = new Promise<void>((resolve) => {
      end = resolve;
    });
    locks.request(LOCK, { mode: "shared", signal: leave.signal }, () => open).catch(() => undefined);
    return () => {
      leave.abort();
      end();
    };
  }, []);
}

/** Whether an address is of a case or of a screen beside one. */
export function namesCase({
  pathname,
  search,
}: {
  readonly pathname: string;
  readonly search: string;
}): boolean {
  const asked = new URLSearchParams(search);
  return asked.has("case") || (/^\/case(\/|$)/.test(pathname) && asked.has("id"));
}

/** Whether a case is open in this tab or in another one. */
export async function anyCaseOpen(): Promise<boolean> {
  if (namesCase(window.location)) return true;
  const { held } = await navigator.locks.query();
  return held?.some(({ name }) => name === LOCK) ?? false;
}
