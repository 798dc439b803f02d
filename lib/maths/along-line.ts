/**
 * Value at a point along straight lines between the points given; level before the first and after the last.
 *
 * Shape: points in any order. Undefined when there are none.
 */
export function alongLine(
  points: readonly { readonly at: number; readonly value: number }[],
  at: number,
): number | undefined {
  const sorted = [...points].sort((a, b) => a.at - b.at);
  const next = sorted.findIndex((point) => point.at >= at);
  const to = sorted[next];
  if (to === undefined) return sorted.at(-1)?.value;
  const from = sorted[next - 1];
  return from === undefined
    ? to.value
    : from.value + ((to.value - from.value) * (at - from.at)) / (to.at - from.at);
}
