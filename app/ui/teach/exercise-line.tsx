"use client";
import Link from "next/link";
import { useState } from "react";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import type { ExerciseHead } from "./replies.ts";

/** One exercise of the list; taking it out is asked twice. */
export function ExerciseLine({
  head,
  when,
  onChanged,
}: {
  readonly head: ExerciseHead;
  readonly when: string;
  readonly onChanged: () => void;
}) {
  const [sure, setSure] = useState(false);
  const { busy, failed, send } = useRequest();
  const remove = async () => {
    await send({ method: "DELETE", path: `/api/v1/exercises/${encodeURIComponent(head.id)}` });
    onChanged();
  };
  return (
    <li className="case-line">
      <Link className="case-link" href={`/teach/exercise?id=${encodeURIComponent(head.id)}`} prefetch={false}>
        <strong>{head.name}</strong>
        <span className="small soft number">changed {when}</span>
      </Link>
      {sure ? (
        <span className="row">
          <button type="button" disabled={busy} onClick={() => void remove()}>
            Take it out for good
          </button>
          <button type="button" disabled={busy} onClick={() => setSure(false)}>
            Keep it
          </button>
          <span className="small soft">Its codes end; attempts at it stay.</span>
        </span>
      ) : (
        <button
          type="button"
          className="plain"
          aria-label={`Remove: ${head.name}`}
          onClick={() => setSure(true)}
        >
          Remove
        </button>
      )}
      <Failed words={failed} />
    </li>
  );
}
