import type { ReactNode } from "react";
import { capital } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { Row } from "../knowledge/row.tsx";

/** Faults as links to where their part tells of them. */
export function FaultLinks({
  faults,
}: {
  readonly faults: readonly { id: string; name: string; part: string; beside?: ReactNode }[];
}) {
  return (
    <ul className="know-list">
      {faults.map(({ id, name, part, beside }) => (
        <Row key={id} href={partHref(part, id)} name={capital(name)}>
          {beside}
        </Row>
      ))}
    </ul>
  );
}
