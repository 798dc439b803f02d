import { endedProblems, logicProblems, unresolvedReferences } from "../unresolved.ts";
import type { LintRule } from "./rule.ts";

/** Every id that a record names is there and in use. */
export const idsResolve: LintRule = {
  name: "ids-resolve",
  about: "Every id, frequency word, place set and car field that a record names is there and in use.",
  check: ({ authored }) =>
    [
      ...unresolvedReferences(authored).filter(({ kind }) => kind !== "source"),
      ...endedProblems(authored),
      ...logicProblems(authored),
    ].map(({ file, path, what, mend }) => ({ record: file, message: `${path}: ${what}`, mend })),
};
