import type { Knowledge, Weight } from "../../../lib/knowledge/schema/compiled.ts";

/** The source of one weight when it is not that of the list; nothing for common practice, which the list's note says. */
export function BasisNote({
  knowledge,
  weight,
}: {
  readonly knowledge: Knowledge;
  readonly weight: Weight | undefined;
}) {
  const source = knowledge.sources.find(({ id }) => id === weight?.basis);
  if (source === undefined || source.status === "none") return null;
  return (
    <span className="basis small soft">
      {source.title}
      {source.status === "memory" && " (from memory)"}
    </span>
  );
}

/** Where the strengths of a list come from, all of them together. */
export function BasisOfList({
  knowledge,
  weights,
}: {
  readonly knowledge: Knowledge;
  readonly weights: readonly Weight[];
}) {
  const statuses = new Set(
    weights.map(({ basis }) => knowledge.sources.find(({ id }) => id === basis)?.status ?? "none"),
  );
  if (!statuses.has("none")) return null;
  return (
    <p className="small soft">
      {statuses.size === 1
        ? "How often: common practice, no source."
        : "How often, where no source stands beside it: common practice, no source."}
    </p>
  );
}
