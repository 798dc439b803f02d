"use client";
import Link from "next/link";
import type { ReactNode } from "react";
import { useSync } from "../../sync/use-sync.ts";

/** What stands below is for those who set exercises; the server holds everybody else off, this says so in words. */
export function TeachGate({
  children,
  others,
}: {
  readonly children: ReactNode;
  /** What everybody else is told who is signed in. */
  readonly others?: ReactNode;
}) {
  const { standing, me } = useSync();
  if (standing.is === "no-server")
    return (
      <p className="notice">
        There is no workshop server behind this page. Exercises are kept there, so none can be set here.
      </p>
    );
  if (me === undefined)
    return (
      <p role="status">
        {standing.is === "away"
          ? "The workshop's server does not answer now. What was set on this device is kept; open the page again when it does."
          : "Asking the server ..."}
      </p>
    );
  const { person } = me;
  if (me.local || person?.role === "owner" || person?.role === "instructor") return children;
  return (
    <p className="notice">
      {person === undefined ? (
        <>
          <Link href="/sign-in">Sign in</Link> as an instructor to set exercises and see how they were worked.
        </>
      ) : (
        (others ?? (
          <>
            Only instructors and the owner set exercises. To work one, open{" "}
            <Link href="/exercise">the bench</Link>.
          </>
        ))
      )}
    </p>
  );
}
