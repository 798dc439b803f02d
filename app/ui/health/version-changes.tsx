import { isEmptyDiff, RECORD_KINDS } from "../../../lib/knowledge/index.ts";
import type { VersionChange } from "../../knowledge/versions.ts";
import { countOf, fileWords, nameOfRecord } from "../../text/record-words.ts";
import { SheetPart } from "../sheet-part.tsx";
import { CompareCases } from "./compare-cases.tsx";
import { MovedWeights } from "./moved-weights.tsx";

const WAYS = [
  ["added", "New"],
  ["changed", "Changed"],
  ["retired", "Gone"],
] as const;

/** What one version changed from the one before it. */
export function VersionChanges({ change }: { readonly change: VersionChange }) {
  const { before, after, diff, cases } = change;
  const id = `from-${before.knowledge.version}-to-${after.knowledge.version}`.replaceAll(".", "-");
  const name = `${after.knowledge.version}${after.sha256 === undefined ? " (not frozen)" : ""}`;
  return (
    <SheetPart id={id} title={`From ${before.knowledge.version} to ${name}`}>
      {isEmptyDiff(diff) && <p className="notice">Nothing differs but the version number.</p>}
      <CompareCases id={id} cases={cases} />
      {!isEmptyDiff(diff) && (
        <>
          <h3 id={`${id}-records`}>Records</h3>
          {WAYS.map(([way, word]) => {
            const kinds = RECORD_KINDS.filter((kind) => diff.records[kind][way].length > 0);
            if (kinds.length === 0) return null;
            return (
              <details key={way}>
                <summary>
                  <span>
                    {word}:{" "}
                    <span className="soft">
                      {kinds.map((kind) => countOf(kind, diff.records[kind][way].length)).join(", ")}
                    </span>
                  </span>
                </summary>
                {kinds.map((kind) => (
                  <p key={kind} className="small">
                    <strong>{countOf(kind, diff.records[kind][way].length)}:</strong>{" "}
                    {diff.records[kind][way]
                      .map((record) =>
                        nameOfRecord(way === "retired" ? before.knowledge : after.knowledge, kind, record),
                      )
                      .join("; ")}
                  </p>
                ))}
              </details>
            );
          })}
          {diff.files.length > 0 && <p>Changed as a whole: {diff.files.map(fileWords).join(", ")}.</p>}
          <MovedWeights id={id} knowledge={after.knowledge} diff={diff} />
        </>
      )}
    </SheetPart>
  );
}
