"use client";
import Link from "next/link";
import { useCaseInHand } from "../../store/case-in-hand.ts";

/** The way back to the case that was left to read a page; nothing when none was. */
export function BackToCase() {
  const held = useCaseInHand();
  if (held === undefined) return null;
  return (
    <nav className="next-bar always" aria-label="Next">
      <Link className="button main" href={`/case?id=${encodeURIComponent(held.id)}`}>
        Back to the case: {held.name}
      </Link>
    </nav>
  );
}
