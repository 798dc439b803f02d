"use client";
import { SiteHead } from "./ui/site-head.tsx";

/** What stands in place of a screen that broke; the case itself is in the store and unharmed. */
export default function ScreenError({ error, reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet">
        <h1>This screen stopped</h1>
        <p>Everything entered is saved on this device. What went wrong: {error.message}</p>
        <p>
          <button type="button" className="main" onClick={reset}>
            Try again
          </button>
        </p>
      </main>
    </>
  );
}
