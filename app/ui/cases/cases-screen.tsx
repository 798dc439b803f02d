"use client";
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import type { DemoCaseRecord, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { putDown } from "../../store/case-in-hand.ts";
import { addEntries } from "../../store/case-database.ts";
import { type CaseInList, useCases } from "../../store/use-cases.ts";
import { useSettings } from "../../store/use-settings.ts";
import { messageOf } from "../../text/message-of.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfFinding, nameOfSuspect } from "../../text/names.ts";
import { BenchLinks } from "../shop/bench-links.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { SiteFoot } from "../site-foot.tsx";
import { SiteHead } from "../site-head.tsx";
import { CaseFileButtons } from "./case-file-buttons.tsx";
import { demoEntries } from "./demo-entries.ts";

/** Cases of this browser, the invented ones to try, and the way to a new one. */
export function CasesScreen() {
  const knowledge = useKnowledge();
  const { cases, trouble, reload, remove } = useCases();
  useEffect(putDown, []);
  const loaded = knowledge.is === "ready" ? knowledge.value : undefined;
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
        <SheetPart id="open-cases" title="In this browser">
          {cases === undefined && trouble === undefined && <p role="status">Looking ...</p>}
          {cases?.length === 0 && (
            <p className="notice">No case yet. Open a new one, or try an invented one below.</p>
          )}
          <ul className="plain-list">
            {(cases ?? []).map((item) => (
              <CaseLine key={item.id} item={item} knowledge={loaded} onRemove={remove} />
            ))}
          </ul>
          <p className="small soft">
            Cases are kept in this browser only. Save a copy of those that matter: clearing the browser&apos;s
            data removes them.
          </p>
          <CaseFileButtons onTaken={reload} />
        </SheetPart>
        <BenchLinks />
        {loaded !== undefined && loaded.demoCases.length > 0 && (
          <SheetPart id="demo-cases" title="Invented cases to try">
            <p className="small soft">No real cars, customers or workshops.</p>
            <ul className="plain-list">
              {loaded.demoCases.map((demo) => (
                <DemoLine key={demo.id} demo={demo} knowledge={loaded} />
              ))}
            </ul>
          </SheetPart>
        )}
      </main>
      <SiteFoot />
      <nav className="next-bar always" aria-label="Next">
        <Link className="button main" href="/case/new">
          New case
        </Link>
      </nav>
    </>
  );
}

function summary(item: CaseInList, knowledge: Knowledge | undefined): string {
  const { state } = item;
  if (knowledge === undefined) return "";
  if (state.verdict !== undefined)
    return `Verdict: ${state.verdict.suspects.map((id) => nameOfSuspect(knowledge, id)).join("; ")}`;
  const complaints = state.answers
    .filter((a) => a.state === "present" && knowledge.complaints.some((c) => c.id === a.finding))
    .map((a) => nameOfFinding(knowledge, a.finding));
  return complaints.length > 0 ? capital(complaints.join(", ")) : "Nothing ticked yet";
}

function CaseLine({
  item,
  knowledge,
  onRemove,
}: {
  readonly item: CaseInList;
  readonly knowledge: Knowledge | undefined;
  readonly onRemove: (id: string) => void;
}) {
  const [asking, setAsking] = useState(false);
  const { state } = item;
  const name = state.vehicle === "" ? "A car" : state.vehicle;
  return (
    <li className="case-line">
      <Link className="case-link" href={`/case?id=${encodeURIComponent(item.id)}`}>
        <strong>{name}</strong>
        {state.invented && <span className="invented-tag">invented</span>}
        <span className="soft">{[state.plate, state.customer].filter(Boolean).join(", ")}</span>
        <span className="small">{summary(item, knowledge)}</span>
        <span className="small soft number">last entry {momentWords(item.lastAt)}</span>
      </Link>
      {asking ? (
        <div className="row" role="group" aria-label={`Remove ${name}`}>
          <span>Remove this case from this browser for good?</span>
          <button type="button" onClick={() => onRemove(item.id)}>
            Remove it
          </button>
          <button type="button" onClick={() => setAsking(false)}>
            Keep it
          </button>
        </div>
      ) : (
        <button type="button" className="plain" aria-label={`Remove ${name}`} onClick={() => setAsking(true)}>
          Remove
        </button>
      )}
    </li>
  );
}

function DemoLine({ demo, knowledge }: { readonly demo: DemoCaseRecord; readonly knowledge: Knowledge }) {
  const router = useRouter();
  const [settings] = useSettings();
  const [failed, setFailed] = useState<string>();
  const open = async () => {
    try {
      const { id, entries } = demoEntries(demo, knowledge, settings.by);
      await addEntries(entries);
      router.push(`/case?id=${id}`);
    } catch (error) {
      setFailed(messageOf(error));
    }
  };
  return (
    <li>
      <button type="button" className="line-button" onClick={() => void open()}>
        <span>
          <strong>{demo.title}</strong> <span className="invented-tag">invented</span>
        </span>
        <span className="small soft">{demo.about}</span>
      </button>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          The case could not be opened: {failed}
        </p>
      )}
    </li>
  );
}
