"use client";
import { useState } from "react";
import { askServer } from "../exercise/ask-attempt.ts";
import { askedOf, askedQuery, type Filter } from "./filter.ts";
import { SentReply } from "./replies.ts";

/** Ways for the results to leave this page: tables, statements as a file, statements to a record store. */
export function ResultsOut({
  filter,
  attempts,
  recordStore,
}: {
  readonly filter: Filter;
  readonly attempts: number;
  readonly recordStore: string | null;
}) {
  const query = askedQuery(filter);
  return (
    <>
      <p className="row">
        <a className="button" href={`/api/v1/attempts.csv${query}`} download>
          Attempts as a table (CSV)
        </a>
        <a className="button" href={`/api/v1/attempts/steps.csv${query}`} download>
          Steps as a table (CSV)
        </a>
        <a className="button" href={`/api/v1/attempts/statements.json${query}`} download>
          Statements (xAPI, JSON)
        </a>
      </p>
      <h3>To a record store</h3>
      {recordStore === null ? (
        <p>
          None is set on this server. Its owner can set one; until then, take the statements as a file and
          hand them over yourself.
        </p>
      ) : (
        <SendOut key={query} filter={filter} attempts={attempts} to={recordStore} />
      )}
    </>
  );
}

interface Progress {
  readonly attempts: number;
  readonly taken: number;
  readonly differing: number;
  readonly refused: readonly string[];
  /** Where to go on; null at the start and at the end. */
  readonly next: string | null;
  readonly state: "ready" | "sending" | "stopped" | "done";
  readonly trouble: string;
}

const START: Progress = {
  ...{ attempts: 0, taken: 0, differing: 0, refused: [], next: null },
  ...{ state: "ready", trouble: "" },
};

function SendOut({
  filter,
  attempts,
  to,
}: {
  readonly filter: Filter;
  readonly attempts: number;
  readonly to: string;
}) {
  const [progress, setProgress] = useState<Progress>(START);
  const send = async (): Promise<void> => {
    let now: Progress = {
      ...(progress.state === "stopped" ? progress : START),
      state: "sending",
      trouble: "",
    };
    setProgress(now);
    do {
      const body = { ...askedOf(filter), ...(now.next !== null && { after: now.next }) };
      const asked = await askServer({ method: "POST", path: "/api/v1/attempts/statements", body }, SentReply);
      now = after(now, asked.is === "ok" ? asked.value : asked.words);
      setProgress(now);
    } while (now.state === "sending");
  };
  const { state } = progress;
  return (
    <>
      <p>
        What is sent to <strong>{to}</strong>: of each trainee the id of the account or, without one, the name
        as it was typed, and nothing else about the person. With it go exercise, course, when it was begun and
        ended, what was named and how surely, minutes, and how it was scored. What was sent before is not
        there twice.
      </p>
      <button type="button" disabled={state === "sending" || attempts === 0} onClick={() => void send()}>
        {state === "sending"
          ? "Sending ..."
          : state === "stopped"
            ? "Send the rest"
            : `Send ${attempts} ${attempts === 1 ? "attempt" : "attempts"}`}
      </button>
      <p role="status">{state === "ready" ? "" : progressWords(progress, attempts)}</p>
      {progress.trouble !== "" && (
        <p className="trouble" role="alert">
          {progress.trouble}
        </p>
      )}
    </>
  );
}

type Sent = ReturnType<typeof SentReply.parse>;

/** A page that met trouble is sent whole again, so it is not counted before. */
function after(now: Progress, sent: Sent | string): Progress {
  if (typeof sent === "string") return { ...now, state: "stopped", trouble: sent };
  if (sent.trouble !== null) return { ...now, state: "stopped", trouble: sent.trouble };
  return {
    attempts: now.attempts + sent.attempts,
    taken: now.taken + sent.taken,
    differing: now.differing + sent.differing,
    refused: [...now.refused, ...sent.refused.map(({ why }) => why)],
    next: sent.next,
    state: sent.next === null ? "done" : "sending",
    trouble: "",
  };
}

function progressWords({ attempts, taken, differing, refused, state }: Progress, of: number): string {
  const reached = state === "done" ? `All ${attempts} attempts sent` : `${attempts} of ${of} attempts sent`;
  const parts = [`${reached}: ${taken} statements taken.`];
  if (differing > 0)
    parts.push(`${differing} are kept there with something else in them and were left as they are.`);
  if (refused.length > 0)
    parts.push(`${refused.length} were not taken: ${[...new Set(refused)].slice(0, 3).join("; ")}.`);
  return parts.join(" ");
}
