import type { Authored } from "./schema/authored.ts";
import type { Knowledge } from "./schema/compiled.ts";

const ENDING_KINDS = ["parts", "faults", "complaints", "features", "observations", "checks"] as const;

/**
 * Ids of an earlier release that have no record any more, as sentences.
 *
 * A record ends by its `ended` field and its file stays: the file is what keeps its id from being used again.
 */
export function goneIds(earlier: Knowledge, authored: Authored): string[] {
  return ENDING_KINDS.flatMap((kind) => {
    const now = new Set(authored[kind].map((record) => record.id));
    return earlier[kind]
      .filter((record) => !now.has(record.id))
      .map(
        (record) =>
          `${kind}/${record.id}.json was in release ${earlier.version} and is gone. Put it back with "ended".`,
      );
  });
}
