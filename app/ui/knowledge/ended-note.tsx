/** Says that a record has ended, and what stands in its place. */
export function EndedNote({
  ended,
}: {
  readonly ended: { readonly since: string; readonly reason: string } | undefined;
}) {
  if (ended === undefined) return null;
  return (
    <p className="notice">
      No longer used since {ended.since}: {ended.reason}
    </p>
  );
}
