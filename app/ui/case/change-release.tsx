import type { ReleaseName } from "../../knowledge/release-index.ts";
import type { EntryBody } from "../../store/new-entry.ts";

/** Weighs the case with the newest knowledge from here on; an entry, so that it can be taken back. */
export function ChangeRelease({
  newest,
  append,
}: {
  readonly newest: ReleaseName;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  return (
    <button
      type="button"
      onClick={() =>
        append({ kind: "release-changed", release: newest.sha256, knowledgeVersion: newest.version })
      }
    >
      Go on with {newest.version}
    </button>
  );
}
