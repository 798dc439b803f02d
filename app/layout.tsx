import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { AppKeeper } from "./offline/app-keeper.tsx";
import "./style/tokens.css";
import "./style/base.css";
import "./style/sheet.css";
import "./style/case.css";
import "./style/check.css";
import "./style/drawing.css";
import "./style/reckon.css";
import "./style/knowledge.css";
import "./style/health.css";
import "./style/people.css";
import "./style/desk.css";
import "./style/exercise.css";
import "./style/teach.css";
import "./style/cases.css";
import "./style/form.css";
import "./style/board.css";
import "./style/print.css";

export const metadata: Metadata = {
  title: { default: "Cornerwise", template: "%s - Cornerwise" },
  description: "From a car's clunk, shake or pull to the one part behind it, and the proof.",
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#f7f5ef" },
    { media: "(prefers-color-scheme: dark)", color: "#14130f" },
  ],
};

/** The sheet that every screen is set on. */
export default function RootLayout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en-GB">
      <body>
        <a className="skip" href="#main">
          Skip to the sheet
        </a>
        {children}
        <AppKeeper />
      </body>
    </html>
  );
}
