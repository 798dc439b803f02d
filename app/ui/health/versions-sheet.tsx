import type { KnowledgeVersion, VersionChange } from "../../knowledge/versions.ts";
import { KnowledgeSheet } from "../knowledge/knowledge-sheet.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { VersionChanges } from "./version-changes.tsx";

/** All versions of the knowledge, and what each changed. */
export function VersionsSheet({
  versions,
  changes,
}: {
  readonly versions: readonly KnowledgeVersion[];
  readonly changes: readonly VersionChange[];
}) {
  return (
    <KnowledgeSheet
      title="Versions of the knowledge"
      lead="A frozen version is never changed. A case names the version it was weighed with."
    >
      <SheetPart id="versions" title="Versions, newest first">
        <ul className="know-list">
          {versions.map(({ knowledge, sha256 }) => (
            <li key={sha256 ?? "now"} className="version-line">
              <p>
                <strong className="number">{knowledge.version}</strong>{" "}
                {sha256 === undefined ? "working knowledge, not frozen" : "frozen"}
              </p>
              <p className="small soft">
                {knowledge.parts.length} parts, {knowledge.faults.length} faults, {knowledge.checks.length}{" "}
                checks, {knowledge.observations.length} observations
              </p>
              {sha256 !== undefined && (
                <p className="small soft">
                  SHA-256 <code>{sha256}</code>, verified when this page was made
                </p>
              )}
            </li>
          ))}
        </ul>
        {changes.length === 0 && <p>There is only one version, so nothing can be compared.</p>}
      </SheetPart>
      {changes.map((change) => (
        <VersionChanges key={change.before.knowledge.version} change={change} />
      ))}
    </KnowledgeSheet>
  );
}
