"use client";
import type { ReactNode } from "react";
import { SiteHead } from "./site-head.tsx";

/** A sheet of one column under the head of the site. */
export function TitledSheet({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet list-sheet">
        <h1>{title}</h1>
        {children}
      </main>
    </>
  );
}
