import type { ReactNode } from "react";
import { BackToCase } from "../case/back-to-case.tsx";
import { SiteFoot } from "../site-foot.tsx";
import { SiteHead, type SitePlace } from "../site-head.tsx";

/** Frame of every page that is there to be read. */
export function KnowledgeSheet({
  at,
  kind,
  title,
  lead,
  children,
}: {
  readonly at?: SitePlace;
  /** What the page is about, above its title: "Part", "Check". */
  readonly kind?: string;
  readonly title: string;
  readonly lead?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <>
      <SiteHead at={at} />
      <main id="main" className="sheet know-sheet">
        {kind !== undefined && <p className="know-kind">{kind}</p>}
        <h1>{title}</h1>
        {lead !== undefined && <p className="lead">{lead}</p>}
        {children}
      </main>
      <SiteFoot />
      <BackToCase />
    </>
  );
}
