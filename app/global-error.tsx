"use client";
import "./style/tokens.css";
import "./style/base.css";
import "./style/sheet.css";

/** What stands there when even the sheet around the screens broke; the framework's own page has styles that are refused. */
export default function GlobalError({ reset }: { readonly reset: () => void }) {
  return (
    <html lang="en-GB">
      <head>
        <title>Cornerwise stopped</title>
      </head>
      <body>
        <main id="main" className="sheet">
          <h1>Cornerwise stopped</h1>
          <p>Everything entered is saved on this device.</p>
          <p>
            <button type="button" className="main" onClick={reset}>
              Try again
            </button>
          </p>
        </main>
      </body>
    </html>
  );
}
