import type { SourceTopic, SourceUse } from "../../../lib/knowledge/pages/index.ts";
import type { SourceRecord } from "../../../lib/knowledge/schema/compiled.ts";

const TOPICS: { readonly [T in SourceTopic]: string } = {
  shows: "how it shows",
  links: "what checks find",
  life: "wear life or share",
  severity: "how grave it is",
};

const STATUS = {
  seen: "the text was read",
  memory: "from memory, the text was not read",
  none: "",
} as const;

/** A source in one line: its title, where in it, and whether it was read. */
export function SourceLine({ source }: { readonly source: SourceRecord }) {
  if (source.status === "none") return <>{source.title}.</>;
  return (
    <>
      {source.title}; {source.where} ({STATUS[source.status]}).{" "}
      {source.note !== undefined && <span className="soft">{source.note}</span>}
    </>
  );
}

/** Where everything said of a fault comes from. */
export function SourceList({ uses }: { readonly uses: readonly SourceUse[] }) {
  return (
    <ul className="small">
      {uses.map(({ source, behind }) => (
        <li key={source.id}>
          {behind.map((topic) => TOPICS[topic]).join(", ")}: <SourceLine source={source} />
        </li>
      ))}
    </ul>
  );
}

/** The one source of what a page says; nothing when there is none. */
export function SourceNote({
  source,
  of,
}: {
  readonly source: SourceRecord | undefined;
  readonly of?: string;
}) {
  if (source === undefined) return null;
  return (
    <p className="small soft">
      Source{of !== undefined && ` of ${of}`}: <SourceLine source={source} />
    </p>
  );
}
