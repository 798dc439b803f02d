/** Other names of a thing, as one of its facts. */
export function NamesFact({ names }: { readonly names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <div className="wide-fact">
      <dt>Also called</dt>
      <dd>{names.join(", ")}</dd>
    </div>
  );
}
