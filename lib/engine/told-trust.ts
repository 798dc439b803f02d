import type { Knowledge, CompiledFeature } from "../knowledge/schema/compiled.ts";

/**
 * Share, 0..1, of what is told of a complaint that is as told: least for where it seems to come from, as noise and shake
 * travel along the body. The rest says nothing.
 */
export function toldTrust(
  { reports }: Pick<Knowledge, "reports">,
  { kind }: Pick<CompiledFeature, "kind">,
): number {
  return kind === "where" ? (reports.where ?? reports.features) : reports.features;
}
