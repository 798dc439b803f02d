export type { Proposal } from "./proposals.ts";
export { type ReadOptions, readText } from "./reader.ts";
export { type Found, searchAll, searchChecks, searchFindings, searchParts } from "./search.ts";
