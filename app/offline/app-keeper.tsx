"use client";
import { useEffect } from "react";
import { keepApp } from "./app-version.ts";

/** Keeps the app on this device; shows nothing. */
export function AppKeeper() {
  useEffect(() => {
    // Not kept, it still works with a network; the next load tries again.
    keepApp().catch(() => undefined);
  }, []);
  return null;
}
