"use client";
import { useId, useState } from "react";
import { Fold } from "../fold.tsx";
import type { CheckProps } from "./check-props.ts";

/** Puts a check aside, with the reason. */
export function CannotBeDone({ state, proposed, append, onDone }: CheckProps) {
  const [reason, setReason] = useState("");
  const id = useId();
  const already = state.notPossible.some((n) => n.check === proposed.id);
  return (
    <Fold title="Cannot be done">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          append({ kind: "not-possible", check: proposed.id, reason: reason.trim().slice(0, 200) });
          onDone();
        }}
      >
        <label htmlFor={id}>Why not?</label>
        <input id={id} value={reason} maxLength={200} onChange={(event) => setReason(event.target.value)} />
        <button type="submit" className="wide">
          {already ? "Note it again" : "Put this check aside"}
        </button>
      </form>
    </Fold>
  );
}
