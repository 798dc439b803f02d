"use client";
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { DemoCaseRecord } from "../../../lib/knowledge/schema/compiled.ts";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import { addEntries } from "../../store/case-database.ts";
import { useSettings } from "../../store/use-settings.ts";
import { messageOf } from "../../text/message-of.ts";
import { SheetPart } from "../sheet-part.tsx";
import { demoEntries } from "./demo-entries.ts";

/** The invented cases of the knowledge, to try. */
export function DemoCases({ release }: { readonly release: OpenRelease }) {
  const { knowledge } = release;
  if (knowledge.demoCases.length === 0) return null;
  return (
    <SheetPart id="demo-cases" title="Invented cases to try">
      <p className="small soft">No real cars, customers or workshops.</p>
      <ul className="plain-list">
        {knowledge.demoCases.map((demo) => (
          <DemoLine key={demo.id} demo={demo} release={release} />
        ))}
      </ul>
    </SheetPart>
  );
}

function DemoLine({ demo, release }: { readonly demo: DemoCaseRecord; readonly release: OpenRelease }) {
  const router = useRouter();
  const [settings] = useSettings();
  const [failed, setFailed] = useState<string>();
  const open = async () => {
    try {
      const { id, entries } = demoEntries(demo, release, settings.by);
      // Looking at an invented case leaves nothing on the server; whoever adds to it sends it.
      await addEntries(entries, { held: true });
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
