"use client";
import type { ReactNode } from "react";
import { SiteHead } from "../site-head.tsx";

/** Sheet of the screens about accounts. */
export function PeopleFrame({ title, children }: { readonly title: string; readonly children: ReactNode }) {
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

/** What went wrong with the last request of a form. */
export function Failed({ words }: { readonly words: string | undefined }) {
  return (
    <p role="alert" className={words === undefined ? undefined : "trouble"}>
      {words}
    </p>
  );
}
