import Link from "next/link";
import type { ReactNode } from "react";

/** One line of a list that leads to a page: its name, and what is said beside it. */
export function Row({
  href,
  name,
  note,
  children,
}: {
  readonly href: string;
  readonly name: string;
  /** A sentence that needs a line of its own. */
  readonly note?: string | undefined;
  /** A word or a figure. */
  readonly children?: ReactNode;
}) {
  return (
    <li className="know-row">
      <Link className="row-link" href={href} prefetch={false}>
        {name}
      </Link>
      {children !== undefined && <span className="row-side">{children}</span>}
      {note !== undefined && <span className="row-note small soft">{note}</span>}
    </li>
  );
}

/** A link in running text. */
export function TextLink({ href, children }: { readonly href: string; readonly children: ReactNode }) {
  return (
    <Link href={href} prefetch={false}>
      {children}
    </Link>
  );
}
