import { CASE_LIMITS } from "../case/case-file.ts";
import type { Entry } from "../case/entries.ts";
import { canonicalJson } from "../knowledge/canonical.ts";
import { StoreProblem } from "./problem.ts";

/** The case file wraps its entries in an object and a list. */
const DEEPEST = CASE_LIMITS.depth - 2;
const INDENT = 4;
/** Characters that a case file has before and after its entries, with room to spare. */
export const FILE_HEAD = 1000;

/** How deep objects and lists nest; counted without recursion, as a stranger may have made the entry. */
function nestingDepth(value: unknown): number {
  let deepest = 0;
  let level: unknown[] = [value];
  while (level.length > 0 && deepest <= DEEPEST) {
    level = level.filter((item) => item !== null && typeof item === "object");
    if (level.length > 0) deepest += 1;
    level = level.flatMap((item) => Object.values(item as object));
  }
  return deepest;
}

/** A key that names the prototype has no place in a case. */
const withoutPrototype = (key: string, value: unknown): unknown => (key === "__proto__" ? undefined : value);

/** An entry as it is kept. */
export interface EntryText {
  /** The same text for equal entries. */
  readonly body: string;
  /** Characters that it adds to its case's file. */
  readonly characters: number;
}

/**
 * The text under which an entry is kept.
 *
 * Errors  StoreProblem bad-entry when it nests deeper than a case file may.
 */
export function entryText(entry: Entry): EntryText {
  if (nestingDepth(entry) > DEEPEST) {
    throw new StoreProblem(
      "bad-entry",
      `Entry ${entry.id} nests deeper than ${DEEPEST} levels. An entry never does; leave it out.`,
      { id: entry.id },
    );
  }
  const kept: unknown = JSON.parse(JSON.stringify(entry), withoutPrototype);
  const printed = JSON.stringify(kept, null, 2);
  return {
    body: canonicalJson(kept),
    characters: printed.length + INDENT * printed.split("\n").length + 2,
  };
}

/** An entry from the text that it was kept under. */
export function entryFromText(body: string): Entry {
  return JSON.parse(body, withoutPrototype) as Entry;
}
