"use client";
import Link from "next/link";
import { useMemo } from "react";
import { presentContexts } from "../../../lib/case/present-contexts.ts";
import { partsFitted } from "../../../lib/case/situation.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { shownDistance } from "../../text/amounts.ts";
import { CaseOfAddress, type Opened } from "../case/opened-case.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { FittedForm } from "./fitted-form.tsx";
import { FittedList } from "./fitted-list.tsx";
import { CURVE_KM } from "./wear-rows.ts";
import { WearTable } from "./wear-table.tsx";

/** How likely the wear parts of a case's car have failed, and will. */
export function WearScreen() {
  return <CaseOfAddress>{(opened) => <WearOfCase {...opened} />}</CaseOfAddress>;
}

function WearOfCase({ knowledge, open: { state, append, trouble }, settings }: Opened) {
  const { hold, odd } = useMemo(() => partsFitted(knowledge, state), [knowledge, state]);
  const ask = {
    car: state.car,
    options: { contexts: presentContexts(knowledge, state), fitted: hold, aheadKm: CURVE_KM },
  };
  const wear = useAnswer("wear", ask, JSON.stringify(ask));
  const lines = wear.value?.lines;
  const parts = useMemo(() => [...new Set(lines?.map((l) => l.part))], [lines]);
  const used = wear.value?.used;
  const ran = used && `${shownDistance(used.km, settings).toLocaleString("en-GB")} ${settings.distance}`;
  const told = state.car["odometerKm"] !== undefined;
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet list-sheet">
        <div className="row no-print">
          <Link className="button" href={`/case?id=${encodeURIComponent(state.caseId)}`}>
            Back to the case
          </Link>
          <button type="button" disabled={lines === undefined} onClick={() => window.print()}>
            Print
          </button>
        </div>
        <h1>Wear ahead: {state.vehicle === "" ? "a car" : state.vehicle}</h1>
        {state.invented && <p className="invented">Invented case: no real car.</p>}
        {trouble !== undefined && (
          <p className="trouble" role="alert">
            {trouble}
          </p>
        )}
        {used !== undefined && (
          <p>
            {told ? "Reckoned" : "How far it has run was not told: reckoned"} with {ran} and{" "}
            {used.years.toFixed(1)} years. Averages of such cars: a small chance does not say that a part is
            good, and what is found at the car counts more.
          </p>
        )}
        <SheetPart id="history" title="Parts renewed">
          <FittedList knowledge={knowledge} state={state} odd={odd} units={settings} append={append} />
          <FittedForm knowledge={knowledge} state={state} parts={parts} units={settings} append={append} />
        </SheetPart>
        <SheetPart id="wear" title="Wear parts" busy={wear.busy}>
          {wear.failed !== undefined && (
            <p className="trouble" role="alert">
              The wear could not be worked out: {wear.failed} Mend the car in the case.
            </p>
          )}
          {lines === undefined && wear.failed === undefined && <p role="status">Working it out ...</p>}
          {lines !== undefined && <WearTable knowledge={knowledge} lines={lines} units={settings} />}
        </SheetPart>
      </main>
    </>
  );
}
