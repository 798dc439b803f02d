"use client";
import { type ReactNode, useState } from "react";

/**
 * A part that is shut until it is wanted; what is in it is made only while it is open.
 *
 * `openAtFirst` counts once: a list must not shut under the finger that ticks it.
 */
export function Fold({
  title,
  openAtFirst = false,
  className,
  children,
}: {
  readonly title: ReactNode;
  readonly openAtFirst?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}) {
  const [open, setOpen] = useState(openAtFirst);
  return (
    <details open={open} className={className} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span>{title}</span>
      </summary>
      {open && children}
    </details>
  );
}
