"use client";
import Link from "next/link";
import { useEffect, useState } from "react";
import { minutesWords } from "../../text/amounts.ts";
import { momentWords } from "../../text/moment.ts";
import { type Asked, askServer } from "./ask-attempt.ts";
import { type AttemptRow, OwnAttemptsReply } from "./replies.ts";

/** Attempts of the account, or of this browser, the last begun first. */
export function MyAttempts() {
  const [asked, setAsked] = useState<Asked<{ attempts: readonly AttemptRow[] }>>();
  useEffect(() => {
    let gone = false;
    void askServer({ method: "GET", path: "/api/v1/attempts/mine" }, OwnAttemptsReply).then(
      (found) => !gone && setAsked(found),
    );
    return () => {
      gone = true;
    };
  }, []);
  if (asked === undefined) return <p role="status">Looking ...</p>;
  if (asked.is === "failed") return <p className="notice">{asked.words}</p>;
  const { attempts } = asked.value;
  if (attempts.length === 0) return <p>None yet in this browser or account.</p>;
  return (
    <ul className="plain-list">
      {attempts.map((attempt) => (
        <li key={attempt.id} className="case-line">
          <Link
            className="case-link"
            href={`/exercise/${attempt.endedAt === null ? "work" : "debrief"}?id=${encodeURIComponent(attempt.id)}`}
            prefetch={false}
          >
            <strong>{attempt.exercise.name}</strong>
            {attempt.course !== null && <span className="soft">{attempt.course}</span>}
            <span className="soft">{standing(attempt)}</span>
            <span className="small soft number">
              {attempt.trainee.name}, begun {momentWords(attempt.startedAt)}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function standing({ endedAt, score, checks }: AttemptRow): string {
  const made = `${checks} ${checks === 1 ? "check" : "checks"} made`;
  if (endedAt === null) return `Not ended: go on. ${made}`;
  if (score === null) return made;
  const named =
    score.right === true ? "Right" : score.rightPart === true ? "Right part, wrong place" : "Not found";
  return `${named}, ${minutesWords(score.minutes)}: see how it went`;
}
