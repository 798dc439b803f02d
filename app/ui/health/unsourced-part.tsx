import { nameOfFinding } from "../../text/names.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";
import { capital, nameOfPart } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { nameOfRecord } from "../../text/record-words.ts";
import { TextLink } from "../knowledge/row.tsx";

/** Links from faults to what they show that rest on common practice alone. */
export function UnsourcedPart({ health: { knowledge, unsourced } }: { readonly health: SiteHealth }) {
  const links = unsourced.reduce((sum, part) => sum + part.links, 0);
  const open = unsourced.reduce((sum, part) => sum + part.unsourced, 0);
  const groups = [...new Set(knowledge.parts.map((part) => part.group))].sort();
  const groupOf = new Map(knowledge.parts.map((part) => [part.id, part.group]));
  return (
    <>
      <p>
        {open} of {links} links from a fault to a complaint or an observation are common practice, with no
        published figure behind how often. Nobody publishes most of them.
      </p>
      {groups.map((group) => {
        const parts = unsourced.filter(
          ({ part, unsourced: count }) => groupOf.get(part) === group && count > 0,
        );
        if (parts.length === 0) return null;
        return (
          <details key={group}>
            <summary>
              <span>
                {capital(group.replaceAll("-", " "))}{" "}
                <span className="soft">
                  ({parts.reduce((sum, part) => sum + part.unsourced, 0)} links of {parts.length} parts)
                </span>
              </span>
            </summary>
            {parts.map((part) => (
              <div key={part.part} className="version-line small" id={`unsourced-${part.part}`}>
                <h3>
                  <TextLink href={partHref(part.part)}>{capital(nameOfPart(knowledge, part.part))}</TextLink>:{" "}
                  {part.unsourced} of {part.links}
                </h3>
                {part.faults.map(({ fault, findings }) => (
                  <p key={fault}>
                    {nameOfRecord(knowledge, "faults", fault).split(": ").slice(1).join(": ")}:{" "}
                    <span className="soft">
                      {findings.map((id) => nameOfFinding(knowledge, id)).join("; ")}
                    </span>
                  </p>
                ))}
              </div>
            ))}
          </details>
        );
      })}
    </>
  );
}
