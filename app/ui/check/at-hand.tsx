import { isMissing } from "../../text/tools.ts";
import type { CheckProps } from "./check-props.ts";

const ORDER = ["owner", "driver", "technician"];

/** On the card of a check that was picked by name: what it takes that is not here, as far as was said. */
export function NotAtHand({ knowledge, proposed, settings }: CheckProps) {
  const { check } = proposed;
  if (check === undefined) return null;
  const needs = knowledge.setUps.setUps.find((s) => s.id === proposed.setUp)?.needs;
  const who = settings.asker === "technician-lift" ? "technician" : settings.asker;
  const missing = [
    ...(ORDER.indexOf(check.who) > ORDER.indexOf(who)
      ? [check.who === "driver" ? "somebody who drives the car" : "a technician"]
      : []),
    ...(needs === "lift" && settings.asker !== "technician-lift" ? ["a lift"] : []),
    ...(needs === "stands" && who !== "technician"
      ? ["a lift, or stands and who knows how to use them"]
      : []),
    ...(check.helper && !settings.helper ? ["a helper"] : []),
    ...check.tools.filter((tool) => isMissing(tool, settings.missingTools)),
  ];
  if (missing.length === 0) return null;
  return (
    <p className="notice">
      <strong>Takes what is not here:</strong> {missing.join("; ")}.
    </p>
  );
}
