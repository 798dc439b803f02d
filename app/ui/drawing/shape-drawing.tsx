import type { DrawnShape, Point } from "./marks.ts";

function path(points: readonly Point[], closed: boolean): string {
  return `${points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x} ${y}`).join("")}${closed ? "Z" : ""}`;
}

/** Coil of a spring seen from above: rings within one another. */
function coilRadii(size: number): number[] {
  return [size, size - 2, size - 4].filter((r) => r > 1);
}

/** One shape of a layout. */
export function ShapeDrawing({ drawn }: { readonly drawn: DrawnShape }) {
  const { shape, points } = drawn;
  const [first] = points;
  if (first === undefined) return null;
  const [x, y] = first;
  switch (shape.kind) {
    case "line":
      return <path className="shape-line" d={path(points, false)} />;
    case "outline":
      return <path className="shape-outline" d={path(points, true)} />;
    case "circle":
      return <circle className="shape-circle" cx={x} cy={y} r={shape.size ?? 3} />;
    case "ring":
      return <circle className="shape-ring" cx={x} cy={y} r={shape.size ?? 4} />;
    case "coil":
      return (
        <>
          {coilRadii(shape.size ?? 8).map((r) => (
            <circle key={r} className="shape-coil" cx={x} cy={y} r={r} />
          ))}
        </>
      );
    case "spot":
      return <circle className="shape-spot" cx={x} cy={y} r={shape.size ?? 2} />;
  }
}
