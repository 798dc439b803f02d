import Link from "next/link";
import type { ReactNode } from "react";

/** Head of every screen: where one is, and the way back to the cases. */
export function SiteHead({
  children,
  home = false,
}: {
  readonly children?: ReactNode;
  readonly home?: boolean;
}) {
  return (
    <header className="site-head">
      {home ? (
        <span className="brand">Cornerwise</span>
      ) : (
        <Link className="brand" href="/">
          Cornerwise <span className="soft">all cases</span>
        </Link>
      )}
      {children}
    </header>
  );
}
