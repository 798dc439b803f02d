"use client";
import Link from "next/link";
import type { CaseHead } from "../../sync/replies.ts";
import type { ServerCases as Found } from "../../sync/use-server-cases.ts";
import { momentWords } from "../../text/moment.ts";
import { SheetPart } from "../sheet-part.tsx";

/** Cases of the workshop that are not on this device; one that is opened is fetched. */
export function ServerCases({
  found,
  here,
  text,
}: {
  readonly found: Found;
  /** Ids of the cases that are on this device. */
  readonly here: ReadonlySet<string>;
  readonly text: string;
}) {
  if (found.status === "off") return null;
  const heads = found.heads.filter(({ id }) => !here.has(id));
  // With nothing there and nothing looked for, the part would only be in the way.
  if (heads.length === 0 && found.more === undefined && text === "" && found.status !== "away") return null;
  return (
    <SheetPart id="server-cases" title="On the workshop's server" busy={found.status === "looking"}>
      {found.status === "away" && (
        <p className="notice">
          The server does not answer now, so its other cases cannot be listed. Those on this device are all
          above.
        </p>
      )}
      {found.status === "looking" && <p role="status">Looking ...</p>}
      {found.status === "ready" && heads.length === 0 && (
        <p>
          {text === "" ? "All of them are on this device." : "No other case on the server has these words."}
        </p>
      )}
      <ul className="plain-list">
        {heads.map((head) => (
          <HeadLine key={head.id} head={head} />
        ))}
      </ul>
      {found.more !== undefined && found.status !== "away" && (
        <button type="button" className="wide" onClick={found.more}>
          Show more
        </button>
      )}
    </SheetPart>
  );
}

function HeadLine({ head }: { readonly head: CaseHead }) {
  const { id, vehicle, plate, customer, invented, closed, changedAt } = head;
  return (
    <li className="case-line">
      <Link className="case-link" href={`/case?id=${encodeURIComponent(id)}`} prefetch={false}>
        <strong>{vehicle === "" ? "A car" : vehicle}</strong>
        {invented && <span className="invented-tag">invented</span>}
        <span className="soft">{[plate, customer].filter(Boolean).join(", ")}</span>
        <span className="small soft number">
          {closed ? "verdict given, " : ""}last entry {momentWords(changedAt)}
        </span>
      </Link>
    </li>
  );
}
