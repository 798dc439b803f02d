/** Words by which a customer would take the car to be in order. */
const SAFE = /\b(safe|safely|roadworthy|nothing to worry)\b/i;

/** Asks whoever writes to leave out what nobody can know from afar. */
export function SafetyWord({ text }: { readonly text: string }) {
  const [word] = SAFE.exec(text) ?? [];
  if (word === undefined) return null;
  return (
    <p className="trouble" role="status">
      &quot;{word}&quot;: nobody can say that of a car that has not been looked at. Leave it out.
    </p>
  );
}
