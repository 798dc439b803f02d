"use client";
import { anyCaseOpen, namesCase } from "./case-open.ts";

/** How the app that is on the screen stands to the newest one. */
export type AppVersion =
  | { readonly is: "current" }
  /** A newer version lies ready; nothing changes until it is taken into use. */
  | { readonly is: "waiting"; readonly takeIntoUse: () => void }
  /** Another tab took the newer version into use: this page is still of the old one. */
  | { readonly is: "replaced" };

/** Between two questions whether there is a newer version, while the page is looked at again and again. */
const LEAST_BETWEEN_MS = 30 * 60_000;

const QUIET_MS = 1000;

let version: AppVersion = { is: "current" };
const listeners = new Set<() => void>();

export function appVersion(): AppVersion {
  return version;
}

export function onAppVersion(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function set(next: AppVersion): void {
  version = next;
  for (const listener of listeners) listener();
}

let started = false;

/** The page has loaded, and what it fetches first has arrived. */
async function quiet(): Promise<void> {
  if (document.readyState !== "complete")
    await new Promise((resolve) => window.addEventListener("load", resolve, { once: true }));
  await new Promise((resolve) => setTimeout(resolve, QUIET_MS));
}

/**
 * Keeps the app on this device and notices newer versions of it, once a page.
 *
 * A newer version is fetched quietly. It is taken into use when a page is loaded while no case is open in any tab, when somebody
 * says so, or by the browser once every tab is closed. Does nothing where browsers do not allow it: on plain http outside
 * this machine.
 */
export async function keepApp(): Promise<void> {
  if (started || process.env.NODE_ENV !== "production" || !("serviceWorker" in navigator)) return;
  started = true;
  const { serviceWorker } = navigator;
  let controlled = serviceWorker.controller !== null;
  let asked = false;
  let touched = false;
  document.addEventListener("input", () => (touched = true), { capture: true, once: true });
  serviceWorker.addEventListener("controllerchange", () => {
    // The first one only begins to keep what is on the screen.
    if (!controlled) controlled = true;
    else if (asked || (!touched && !namesCase(window.location))) window.location.reload();
    else set({ is: "replaced" });
  });

  // Nothing to be had where it is blocked.
  const registration = (await serviceWorker.register("/sw.js", { updateViaCache: "none" })) as
    | ServiceWorkerRegistration
    | undefined;
  if (registration === undefined) return;
  const takeIntoUse = (): void => {
    asked = true;
    registration.waiting?.postMessage({ type: "SKIP_WAITING" });
  };
  const notice = (): void => {
    if (registration.waiting !== null && controlled) set({ is: "waiting", takeIntoUse });
  };
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", notice);
  });
  // Not while the page is still being answered by the version that is to go: browsers then put the change off for minutes.
  await quiet();
  if (registration.waiting !== null && controlled && !touched && !(await anyCaseOpen())) takeIntoUse();
  else notice();

  let looked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - looked < LEAST_BETWEEN_MS) return;
    looked = Date.now();
    registration.update().catch(() => undefined); // no network: asked again later
  });
}
