"use client";
import { useSyncExternalStore } from "react";
import { appVersion, onAppVersion } from "../offline/app-version.ts";

const CURRENT = { is: "current" } as const;

/** What there is to say about the app itself: no network, or a newer version; nothing most of the time. */
export function AppNews() {
  const online = useSyncExternalStore(
    onNetwork,
    () => navigator.onLine,
    () => true,
  );
  const version = useSyncExternalStore(onAppVersion, appVersion, () => CURRENT);
  return (
    <>
      {!online && (
        <p className="app-news" role="status">
          No network: everything is kept on this device.
        </p>
      )}
      {version.is === "waiting" && (
        <p className="app-news" role="status">
          A new version of Cornerwise is ready. What is entered stays.{" "}
          <button type="button" onClick={version.takeIntoUse}>
            Use the new version
          </button>
        </p>
      )}
      {version.is === "replaced" && (
        <p className="app-news" role="status">
          Another tab has changed to a new version of Cornerwise. What is entered stays.{" "}
          <button type="button" onClick={() => window.location.reload()}>
            Load this page anew
          </button>
        </p>
      )}
    </>
  );
}

function onNetwork(listener: () => void): () => void {
  window.addEventListener("online", listener);
  window.addEventListener("offline", listener);
  return () => {
    window.removeEventListener("online", listener);
    window.removeEventListener("offline", listener);
  };
}
