"use client";
import Link from "next/link";
import { type ReactNode, useEffect } from "react";

/** Element of the case that a page was opened from; once back, it is gone to again. */
let left: string | undefined;

/** Leads from a case to a page to read; what is half-done in the case is there on the way back. */
export function AboutLink({
  from,
  href,
  label,
  children,
}: {
  /** Id of the element to come back to. */
  readonly from: string;
  readonly href: string;
  /** Said instead of the text, when that is too short to stand alone. */
  readonly label?: string;
  readonly children: ReactNode;
}) {
  return (
    <Link
      className={label === undefined ? undefined : "about"}
      href={href}
      prefetch={false}
      aria-label={label}
      onClick={() => {
        left = from;
      }}
    >
      {children}
    </Link>
  );
}

/** Goes back to where the case was left to read a page, once what stood there is on the screen. */
export function useReturn(ready: boolean): void {
  useEffect(() => {
    if (!ready || left === undefined) return undefined;
    const id = left;
    const frame = requestAnimationFrame(() => {
      left = undefined;
      const place = document.getElementById(id);
      (place?.closest("li") ?? place)?.scrollIntoView({ block: "start" });
    });
    return () => cancelAnimationFrame(frame);
  }, [ready]);
}
