"use client";
import Link from "next/link";
import { Suspense, useEffect } from "react";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { useReleasesKept } from "../../knowledge/use-releases-kept.ts";
import { putDown } from "../../store/case-in-hand.ts";
import { useCases } from "../../store/use-cases.ts";
import { BenchLinks } from "../shop/bench-links.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { SiteFoot } from "../site-foot.tsx";
import { SiteHead } from "../site-head.tsx";
import { KeptLineOfAll } from "../sync/kept-line.tsx";
import { CaseFileButtons } from "./case-file-buttons.tsx";
import { CaseOverview } from "./case-overview.tsx";
import { DemoCases } from "./demo-cases.tsx";
import { UnsignedCases } from "./unsigned-cases.tsx";

/** The cases of the workshop and of this device, the invented ones to try, and the way to a new one. */
export function CasesScreen() {
  const knowledge = useKnowledge();
  const { cases, trouble, reload, remove } = useCases();
  useEffect(putDown, []);
  useReleasesKept(cases);
  const release = knowledge.is === "ready" ? knowledge.value : undefined;
  return (
    <>
      <SiteHead home />
      <main id="main" className="sheet list-sheet">
        <h1>Cases</h1>
        <p className="lead">
          From a car&apos;s clunk, shake or pull to the one part behind it, and the proof before it is
          ordered.
        </p>
        {trouble !== undefined && (
          <p className="trouble" role="alert">
            {trouble}
          </p>
        )}
        {knowledge.is === "failed" && (
          <p className="trouble" role="alert">
            The knowledge did not arrive: {knowledge.message} Load the page again.
          </p>
        )}
        <SheetPart id="open-cases" title="The workshop's cases">
          {cases === undefined && trouble === undefined && <p role="status">Looking ...</p>}
          {cases !== undefined && (
            <Suspense>
              <CaseOverview cases={cases} knowledge={release?.knowledge} onRemove={remove} />
            </Suspense>
          )}
          <KeptLineOfAll />
          <UnsignedCases />
          <CaseFileButtons onTaken={reload} />
        </SheetPart>
        <BenchLinks />
        {release !== undefined && <DemoCases release={release} />}
      </main>
      <SiteFoot />
      <nav className="next-bar always" aria-label="Next">
        <div className="next-pair">
          <Link className="button main" href="/case/new">
            New case
          </Link>
          <Link className="button" href="/case/desk">
            Take a call
          </Link>
        </div>
      </nav>
    </>
  );
}
