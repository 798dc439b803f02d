import Link from "next/link";
import type { ReactNode } from "react";
import { SiteHead } from "./site-head.tsx";

/** A page with a word to say and the way back to the cases. */
export function PlainPage({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet">
        <h1>{title}</h1>
        {children}
        <p>
          <Link className="button" href="/">
            All cases
          </Link>
        </p>
      </main>
    </>
  );
}
