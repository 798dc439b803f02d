import type { checksIndex } from "../../../lib/knowledge/pages/index.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { checkHref } from "../../text/page-links.ts";
import { SheetPart } from "../sheet-part.tsx";
import { KnowledgeSheet } from "./knowledge-sheet.tsx";
import { Row } from "./row.tsx";

/** All checks by the state that the car must be in. */
export function ChecksList({ groups }: { readonly groups: ReturnType<typeof checksIndex> }) {
  return (
    <KnowledgeSheet at="checks" title="Checks" lead="By the state that the car must be in.">
      <nav aria-label="States of the car">
        <ul className="know-list">
          {groups.map(({ setUp, checks }) => (
            <li key={setUp.id} className="know-row">
              <a className="row-link" href={`#${setUp.id}`}>
                {capital(setUp.name)}
              </a>
              <span className="row-side number">{checks.length}</span>
            </li>
          ))}
        </ul>
      </nav>
      {groups.map(({ setUp, checks }) => (
        <SheetPart key={setUp.id} id={setUp.id} title={capital(setUp.name)}>
          <p className="soft">{setUp.about}</p>
          <ul className="know-list">
            {checks.map((check) => (
              <Row key={check.id} href={checkHref(check.id)} name={capital(check.name)}>
                {minutesWords(check.minutes)}
                {check.helper && ", two people"}
                {check.who !== "technician" && `, ${check.who}`}
              </Row>
            ))}
          </ul>
        </SheetPart>
      ))}
    </KnowledgeSheet>
  );
}
