import type { PartsGroup, partsIndex } from "../../../lib/knowledge/pages/index.ts";
import { capital } from "../../text/names.ts";
import { needsWords } from "../../text/needs-words.ts";
import { partHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { Row } from "./row.tsx";

type Areas = ReturnType<typeof partsIndex>;

const TITLES: { readonly [A in Areas[number]["id"]]: string } = {
  front: "At the front",
  rear: "At the rear",
  either: "At front and rear",
  whole: "The whole car",
};

/** All parts by place; those that hang on the layout stand under each layout that has them. */
export function PartsList({ areas }: { readonly areas: Areas }) {
  return (
    <KnowledgeSheet
      at="parts"
      title="Parts"
      lead="What can be behind a noise, a shake, a pull or a worn tyre."
    >
      {areas.map(({ id, byLayout, byGroup }) => (
        <SheetPart key={id} id={id} title={TITLES[id]}>
          {byLayout.map((group) => (
            <Group key={group.id} id={group.id} title={group.name} group={group} />
          ))}
          {byGroup.map((group) => (
            <Group
              key={group.id}
              id={`${id}-${group.id}`}
              title={`${byLayout.length > 0 ? "Any layout: " : ""}${group.name}`}
              group={group}
            />
          ))}
        </SheetPart>
      ))}
    </KnowledgeSheet>
  );
}

function Group({
  id,
  title,
  group,
}: {
  readonly id: string;
  readonly title: string;
  readonly group: PartsGroup;
}) {
  return (
    <details id={id}>
      <summary>
        <span>
          {capital(title)} <span className="soft">({group.parts.length})</span>
        </span>
      </summary>
      <ul className="know-list">
        {group.parts.map(({ part, needs }) => (
          <Row
            key={part.id}
            href={partHref(part.id)}
            name={capital(part.name)}
            note={needs.length > 0 ? `Only with ${needsWords(needs)}` : undefined}
          />
        ))}
      </ul>
    </details>
  );
}
