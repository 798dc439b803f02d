import type { ReactNode } from "react";

/** One numbered part of the sheet, with its heading. */
export function SheetPart({
  id,
  title,
  busy = false,
  children,
}: {
  readonly id: string;
  readonly title: string;
  /** What it shows is about to be replaced. */
  readonly busy?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <section className="sheet-part" id={id} aria-labelledby={`${id}-title`} aria-busy={busy}>
      <h2 id={`${id}-title`} tabIndex={-1}>
        {title}
      </h2>
      {children}
    </section>
  );
}

/** Goes to a part and puts the keyboard there. */
export function goToPart(id: string): void {
  const title = document.getElementById(`${id}-title`);
  title?.focus({ preventScroll: true });
  document.getElementById(id)?.scrollIntoView({ block: "start" });
}
