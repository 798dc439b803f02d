import { LINT_RULES } from "../../../lib/knowledge/index.ts";
import type { SiteHealth } from "../../knowledge/site-health.ts";

/** The rules of the lint, what breaks them, and what may. */
export function LintPart({ health: { problems, exceptions } }: { readonly health: SiteHealth }) {
  return (
    <>
      <p>
        {LINT_RULES.length} rules.{" "}
        {problems.length === 0 ? "No record breaks one" : `Broken ${problems.length} times`}
        {exceptions.length > 0 && `; ${exceptions.length} excepted, with the reason`}.
      </p>
      {problems.length > 0 && (
        <ul>
          {problems.map(({ rule, record, message, mend }) => (
            <li key={`${rule} ${record} ${message}`}>
              {record}: {message}. <span className="soft">{mend}</span>
            </li>
          ))}
        </ul>
      )}
      {exceptions.map(({ rule, record, why }) => (
        <p key={`${rule} ${record}`}>
          Excepted from <code>{rule}</code>: <code>{record}</code>. {why}
        </p>
      ))}
      <details>
        <summary>
          <span>
            All rules <span className="soft">({LINT_RULES.length})</span>
          </span>
        </summary>
        <dl className="often">
          {LINT_RULES.map(({ name, about }) => (
            <div key={name} id={`rule-${name}`}>
              <dt>
                <code>{name}</code>
              </dt>
              <dd className="small">{about}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}
