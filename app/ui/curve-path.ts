/** The path of a curve through points of a drawing, in a drawing's own units. */
export function curvePath(points: readonly (readonly [x: number, y: number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
}
