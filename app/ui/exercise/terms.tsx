import { minutesWords } from "../../text/amounts.ts";
import type { OpenAttempt } from "./use-attempt.ts";

/** What the exercise gives to work with, where it is less than everything. */
export function Terms({ exercise }: { readonly exercise: OpenAttempt["exercise"] }) {
  const { lift, helper, missingTools, mostMinutes, hints } = exercise.terms;
  const lines = [
    ...(mostMinutes === undefined ? [] : [`${minutesWords(mostMinutes)} on the ramp, and no more.`]),
    ...(lift ? [] : ["No lift."]),
    ...(helper ? [] : ["Nobody to help."]),
    ...(missingTools.length === 0 ? [] : [`Not at hand: ${missingTools.join("; ")}.`]),
    ...(hints ? [] : ["The next check is not proposed: find it yourself."]),
  ];
  if (lines.length === 0) return null;
  return (
    <div className="notice">
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
