import type { CompiledCheck } from "../../../lib/knowledge/schema/compiled.ts";
import { WHO_WORDS } from "../../text/who-words.ts";
import { Fact } from "../fact.tsx";

interface CheckProps {
  readonly check: CompiledCheck;
}

/** Who makes a check, and with what. */
export function WhoAndTools({ check }: CheckProps) {
  return (
    <>
      <Fact name="Who">
        {WHO_WORDS[check.who]}
        {check.helper && ", with a helper"}
      </Fact>
      <Fact name="Tools">{check.tools.length === 0 ? "none" : check.tools.join(", ")}</Fact>
    </>
  );
}

/** How a check is made, and what is normal. */
export function CheckSteps({ check }: CheckProps) {
  return (
    <>
      <ol className="steps">
        {check.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>
        <strong>Normal:</strong> {check.normal}
      </p>
    </>
  );
}
