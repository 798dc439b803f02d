import { publishedShares, type ShareLine } from "../../lib/engine/index.ts";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import {
  type Authored,
  type Coverage,
  coverageOf,
  type InseparablePair,
  inseparablePairs,
  type Knowledge,
  type LintException,
  lintKnowledge,
  type LintReport,
  type Reach,
  readExceptions,
  readKnowledge,
  readReach,
  type UnsourcedPart,
  unsourcedLinks,
} from "../../lib/knowledge/index.ts";
import { knowledgeFiles } from "./knowledge-files.ts";

/** Well above what counts as told apart, so that the nearest pairs show. */
const LISTED_WITHIN = 30;

/** What there is to say about how sound the knowledge is. */
export interface SiteHealth {
  readonly knowledge: Knowledge;
  /** Whether a release of this version is frozen; until then it may change under its number. */
  readonly frozen: boolean;
  readonly problems: LintReport;
  readonly exceptions: readonly LintException[];
  readonly coverage: Coverage;
  /** Pairs whose most telling result is less than `listedWithin` times likelier from one. */
  readonly pairs: readonly InseparablePair[];
  readonly listedWithin: number;
  /** Undefined while this version was not measured. */
  readonly reach: Reach | undefined;
  readonly unsourced: readonly UnsourcedPart[];
  readonly shares: readonly ShareLine[];
  readonly assumptions: readonly string[];
}

/** Looks the knowledge through; on the server only, while the app is being built. */
export function siteHealth(): SiteHealth {
  const files = knowledgeFiles();
  const authored: Authored = readKnowledge(files);
  const knowledge = compileKnowledge(authored);
  const exceptions = readExceptions(files.get("lint-exceptions.json") ?? "[]");
  const measured = files.get("measured/reach.json");
  const reach = measured === undefined ? undefined : readReach(measured);
  return {
    knowledge,
    frozen: files.has(`releases/${knowledge.version}/compiled.json`),
    problems: lintKnowledge(knowledge, authored, exceptions),
    exceptions,
    coverage: coverageOf(knowledge),
    pairs: inseparablePairs(knowledge, LISTED_WITHIN),
    listedWithin: LISTED_WITHIN,
    reach: reach?.knowledge === knowledge.version ? reach : undefined,
    unsourced: unsourcedLinks(knowledge),
    shares: publishedShares(knowledge),
    assumptions: knowledge.publishedShares?.assumptions ?? [],
  };
}
