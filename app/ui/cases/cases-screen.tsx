"use client";
import Link from "next/link";
import { useEffect, useMemo, useState } from "react";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { useReleasesKept } from "../../knowledge/use-releases-kept.ts";
import { putDown } from "../../store/case-in-hand.ts";
import { useCases } from "../../store/use-cases.ts";
import { useServerCases } from "../../sync/use-server-cases.ts";
import { BenchLinks } from "../shop/bench-links.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { SiteFoot } from "../site-foot.tsx";
import { SiteHead } from "../site-head.tsx";
import { KeptLineOfAll } from "../sync/kept-line.tsx";
import { CaseFileButtons } from "./case-file-buttons.tsx";
import { DemoCases } from "./demo-cases.tsx";
import { DeviceCases } from "./device-cases.tsx";
import { ServerCases } from "./server-cases.tsx";
import { UnsignedCases } from "./unsigned-cases.tsx";

/** From how many cases on a search is worth its place. */
const WORTH_SEARCHING = 6;

/** Cases of this device and of the server, the invented ones to try, and the way to a new one. */
export function CasesScreen() {
  const knowledge = useKnowledge();
  const { cases, trouble, reload, remove } = useCases();
  const [text, setText] = useState("");
  const found = useServerCases(text);
  useEffect(putDown, []);
  useReleasesKept(cases);
  const here = useMemo(() => new Set((cases ?? []).map(({ id }) => id)), [cases]);
  const release = knowledge.is === "ready" ? knowledge.value : undefined;
  const loaded = release?.knowledge;
  const many = text !== "" || (cases?.length ?? 0) + found.heads.length >= WORTH_SEARCHING;
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
        {many && (
          <div className="case-search">
            <label htmlFor="case-search">Search the cases by vehicle, plate or customer</label>
            <input
              id="case-search"
              type="search"
              autoComplete="off"
              maxLength={100}
              value={text}
              onChange={(event) => setText(event.target.value)}
            />
          </div>
        )}
        <SheetPart id="open-cases" title="On this device">
          {cases === undefined && trouble === undefined && <p role="status">Looking ...</p>}
          {cases !== undefined && (
            <DeviceCases
              cases={cases}
              text={text}
              elsewhere={found.heads.length > 0}
              knowledge={loaded}
              onRemove={remove}
            />
          )}
          <KeptLineOfAll />
          <UnsignedCases />
          <CaseFileButtons onTaken={reload} />
        </SheetPart>
        <ServerCases found={found} here={here} text={text} />
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
