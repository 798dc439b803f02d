"use client";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { CaseLine } from "./case-line.tsx";
import type { OverviewRow } from "./overview-rows.ts";
import { UrgencyMark, urgencyWords } from "./urgency-mark.tsx";

interface Group {
  readonly title: string;
  readonly rows: OverviewRow[];
}

/** Cases of one urgency under one heading, in the order in which they come. */
function groupsOf(rows: readonly OverviewRow[], levels: Advice["levels"]): Group[] {
  const groups = new Map<string, Group>();
  for (const row of rows) {
    const title = row.closed ? "Verdict given" : urgencyWords(row.urgency, levels);
    const group = groups.get(title) ?? { title, rows: [] };
    groups.set(title, group);
    group.rows.push(row);
  }
  return [...groups.values()];
}

/** The cases, under headings by urgency when they are sorted so. */
export function CaseGroups({
  rows,
  grouped,
  levels,
  knowledge,
  now,
  onRemove,
}: {
  readonly rows: readonly OverviewRow[];
  readonly grouped: boolean;
  readonly levels: Advice["levels"];
  readonly knowledge: Knowledge | undefined;
  readonly now: number;
  readonly onRemove: (id: string) => void;
}) {
  // Until the knowledge is there nobody can say what a level is called.
  const named = levels.length > 0;
  const list = (some: readonly OverviewRow[]) => (
    <ul className="plain-list">
      {some.map((row) => (
        <CaseLine
          key={row.id}
          row={row}
          levels={levels}
          knowledge={knowledge}
          now={now}
          marked={!grouped && named}
          onRemove={onRemove}
        />
      ))}
    </ul>
  );
  if (!grouped || !named) return list(rows);
  return groupsOf(rows, levels).map(({ title, rows: own }) => (
    <section key={title} className="case-group" aria-label={title}>
      <h3>
        {own[0]?.closed === false && <UrgencyMark urgency={own[0].urgency} levels={levels} />}
        {title}
      </h3>
      {list(own)}
    </section>
  ));
}
