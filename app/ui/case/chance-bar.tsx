/** A chance as a length; the words beside it say the same. */
export function ChanceBar({
  chance,
  look,
}: {
  readonly chance: number;
  readonly look: "solid" | "hatched" | "dotted";
}) {
  return (
    <span className="bar" aria-hidden="true">
      <span className={`bar-fill ${look}`} style={{ width: `${Math.max(0.6, chance * 100).toFixed(1)}%` }} />
    </span>
  );
}
