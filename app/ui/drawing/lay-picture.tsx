import type { LayPicture } from "../../../lib/knowledge/schema/lay.ts";

/** A line drawing that goes with a question; its name says what is to be seen. */
export function LayPictureDrawing({ picture }: { readonly picture: LayPicture }) {
  const { name, width, height, shapes } = picture;
  return (
    <svg className="lay-picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      {shapes.map(({ kind, path, text }) => {
        if (kind !== "text") return <path key={path} className={`lay-${kind}`} d={path} />;
        const [x, y] = path.match(/-?[0-9.]+/g) ?? [];
        return (
          <text key={path} className="lay-text" x={x} y={y}>
            {text}
          </text>
        );
      })}
    </svg>
  );
}
