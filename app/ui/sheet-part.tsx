import type { ReactNode } from "react";

/** One numbered part of the sheet, with its heading. */
export function SheetPart({
  id,
  title,
  aside,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <section className="sheet-part" id={id} aria-labelledby={`${id}-title`}>
      <div className="sheet-part-head">
        <h2 id={`${id}-title`} tabIndex={-1}>
          {title}
        </h2>
        {aside}
      </div>
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
