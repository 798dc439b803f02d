import { unresolvedReferences } from "../unresolved.ts";
import type { LintRule } from "./rule.ts";

/** Every basis is a source record. */
export const sourcesExist: LintRule = {
  name: "sources-exist",
  about: "Every basis of a number or a word is the id of a source record.",
  check: ({ authored }) =>
    unresolvedReferences(authored)
      .filter(({ kind }) => kind === "source")
      .map(({ file, path, what, mend }) => ({ record: file, message: `${path}: ${what}`, mend })),
};
