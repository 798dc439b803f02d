"use client";
import { useState } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { CaseInList } from "../../store/use-cases.ts";
import { CaseLine, caseSummary } from "./case-line.tsx";

/** Cases of a page. */
const PAGE = 50;

/** Cases that are on this device and hold all of the words that are looked for. */
export function DeviceCases({
  cases,
  text,
  elsewhere,
  knowledge,
  onRemove,
}: {
  readonly cases: readonly CaseInList[];
  readonly text: string;
  /** There are cases on the server. */
  readonly elsewhere: boolean;
  readonly knowledge: Knowledge | undefined;
  readonly onRemove: (id: string) => void;
}) {
  const [most, setMost] = useState(PAGE);
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const found = cases.filter((item) => {
    const { vehicle, plate = "", customer } = item.state;
    const line = [vehicle, plate, customer, caseSummary(item, knowledge)].join(" ").toLowerCase();
    return words.every((word) => line.includes(word));
  });
  return (
    <>
      {cases.length === 0 && (
        <p className="notice">
          {elsewhere
            ? "None yet. Those of the workshop's server are below; one that is opened is kept here too."
            : "No case yet. Open a new one, or try an invented one below."}
        </p>
      )}
      {cases.length > 0 && found.length === 0 && <p>No case on this device has these words.</p>}
      <ul className="plain-list">
        {found.slice(0, most).map((item) => (
          <CaseLine key={item.id} item={item} knowledge={knowledge} onRemove={onRemove} />
        ))}
      </ul>
      {found.length > most && (
        <button type="button" className="wide" onClick={() => setMost(most + PAGE)}>
          Show {Math.min(PAGE, found.length - most)} more of {found.length}
        </button>
      )}
    </>
  );
}
