"use client";
import { useEffect } from "react";
import { keepApp } from "./app-version.ts";

/** Keeps the app on this device; shows nothing. */
export function AppKeeper() {
  useEffect(() => {
    // A customer answers a few questions, perhaps over a slow line: the whole app has no business on their phone.
    if (window.location.pathname === "/form") return;
    // Not kept, it still works with a network; the next load tries again.
    keepApp().catch(() => undefined);
  }, []);
  return null;
}
