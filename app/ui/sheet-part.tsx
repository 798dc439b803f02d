import type { KeyboardEvent, ReactNode } from "react";

/** One numbered part of the sheet, with its heading. */
export function SheetPart({
  id,
  title,
  busy = false,
  onKeyDown,
  children,
}: {
  readonly id: string;
  readonly title: string;
  /** What it shows is about to be replaced. */
  readonly busy?: boolean;
  /** Keys that mean something while the keyboard is in this part. */
  readonly onKeyDown?: (event: KeyboardEvent) => void;
  readonly children: ReactNode;
}) {
  return (
    // Keys are a short way to buttons that stand in the part and are reached by Tab as well.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <section
      className="sheet-part"
      id={id}
      aria-labelledby={`${id}-title`}
      aria-busy={busy}
      onKeyDown={onKeyDown}
    >
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
