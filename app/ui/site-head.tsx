import Link from "next/link";
import type { ReactNode } from "react";
import { AppNews } from "./app-news.tsx";

/** Parts of the site that the head leads to. */
const PLACES = [
  { id: "parts", name: "Parts", href: "/parts" },
  { id: "checks", name: "Checks", href: "/checks" },
  { id: "findings", name: "Findings", href: "/findings" },
  { id: "search", name: "Search", href: "/search" },
] as const;

export type SitePlace = (typeof PLACES)[number]["id"];

/** Head of every screen: where one is, the way back to the cases, and what can be read. */
export function SiteHead({
  children,
  home = false,
  at,
}: {
  readonly children?: ReactNode;
  readonly home?: boolean;
  readonly at?: SitePlace | undefined;
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
      <nav className="site-places" aria-label="Knowledge">
        {PLACES.map(({ id, name, href }) => (
          <Link key={id} href={href} prefetch={false} aria-current={id === at ? "true" : undefined}>
            {name}
          </Link>
        ))}
      </nav>
      {children}
      <AppNews />
    </header>
  );
}
