"use client";
import { type ReactNode, useEffect, useRef } from "react";

/** Whether a page of the form was shown before: the first one begins where every page begins. */
let shownBefore = false;

/** What a page of the form is about; the keyboard and the reading voice begin here on every new page. */
export function PageTitle({ children }: { readonly children: ReactNode }) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (shownBefore) {
      window.scrollTo(0, 0);
      title.current?.focus({ preventScroll: true });
    }
    shownBefore = true;
  }, []);
  return (
    <h1 id="form-title" ref={title} tabIndex={-1}>
      {children}
    </h1>
  );
}
