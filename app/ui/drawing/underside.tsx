"use client";
import { memo, useMemo } from "react";
import type { CaseCar } from "../../../lib/case/entries.ts";
import { checkLogic } from "../../../lib/knowledge/logic.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Row } from "../../engine/protocol.ts";
import { chanceWords } from "../../text/chance-words.ts";
import { likelyCar, partsOf } from "./likely-car.ts";
import { type DrawnShape, drawnShapes, layoutsOf, type Mark, placeMarks } from "./marks.ts";
import { ShapeDrawing } from "./shape-drawing.tsx";

/** This car's suspension and steering, with the suspects where they sit. */
export function Underside({
  knowledge,
  car,
  rows,
  open,
  onOpen,
}: {
  readonly knowledge: Knowledge;
  readonly car: CaseCar;
  readonly rows: readonly Row[];
  readonly open: string | undefined;
  readonly onOpen: (suspect: string) => void;
}) {
  const carKey = JSON.stringify(car);
  const { layouts, shapes, assumed } = useMemo(() => {
    const likely = likelyCar(knowledge, JSON.parse(carKey) as CaseCar);
    const drawn = layoutsOf(knowledge, likely);
    return {
      layouts: drawn,
      shapes: drawnShapes(drawn, partsOf(knowledge, likely)),
      assumed: [...drawnBy(knowledge)].some((path) => likely.assumed.has(path)),
    };
  }, [knowledge, carKey]);
  const marks = useMemo(() => placeMarks(knowledge, shapes, rows), [knowledge, shapes, rows]);
  const shown = (["front", "rear"] as const).flatMap((axle) =>
    layouts.filter((l) => l.axle === axle).map((l) => l.name),
  );
  return (
    <figure className="underside">
      <svg viewBox="-116 -142 232 284" role="group" aria-label="Drawing of the car with the suspects marked">
        <defs>
          <pattern
            id="mark-some"
            width="3"
            height="3"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect width="1.5" height="3" className="mark-ink" />
          </pattern>
          <pattern id="mark-little" width="3.4" height="3.4" patternUnits="userSpaceOnUse">
            <circle cx="1.7" cy="1.7" r="0.7" className="mark-ink" />
          </pattern>
        </defs>
        <g aria-hidden="true">
          <text className="drawing-word" x="0" y="-132" textAnchor="middle">
            FRONT
          </text>
          <text className="drawing-word" x="0" y="139" textAnchor="middle">
            REAR
          </text>
          <text className="drawing-word" x="-105" y="4" textAnchor="middle">
            L
          </text>
          <text className="drawing-word" x="105" y="4" textAnchor="middle">
            R
          </text>
          <Shapes shapes={shapes} />
        </g>
        {marks.toReversed().map((mark) => (
          <MarkDrawing key={mark.suspect.id} mark={mark} isOpen={open === mark.suspect.id} onOpen={onOpen} />
        ))}
      </svg>
      <figcaption className="small soft">
        Seen from above, as if through the car: left (L) is the driver&apos;s left, seated facing forward.
        From underneath the sides swap. Drawn: {shown.join("; ")}
        {assumed && "; what was not told of the car is drawn as most cars have it"}. Numbers are those of the
        ranking.
      </figcaption>
    </figure>
  );
}

/** Attributes that change the drawing: those of the layouts and those that parts depend on. */
function drawnBy(knowledge: Knowledge): ReadonlySet<string> {
  const paths = new Set(knowledge.parts.flatMap(({ when }) => (when === undefined ? [] : checkLogic(when))));
  for (const { axle, attribute } of knowledge.layouts) {
    if (attribute !== undefined) paths.add(`${axle}.layout`);
  }
  return paths;
}

/** The car itself; it stays while only the marks move. */
const Shapes = memo(function Shapes({ shapes }: { readonly shapes: readonly DrawnShape[] }) {
  return shapes.map((drawn) => <ShapeDrawing key={drawn.key} drawn={drawn} />);
});

function MarkDrawing({
  mark,
  isOpen,
  onOpen,
}: {
  readonly mark: Mark;
  readonly isOpen: boolean;
  readonly onOpen: (suspect: string) => void;
}) {
  const { suspect, rank, spot, at } = mark;
  const size = 7.5 + 8 * Math.sqrt(suspect.explains);
  const fill = suspect.explains >= 0.5 ? "mark-much" : suspect.explains >= 0.15 ? "mark-some" : "mark-little";
  return (
    <a
      href={`#suspect-${suspect.id}`}
      className="mark"
      aria-label={`${rank}: ${suspect.name}, ${chanceWords(suspect.explains)}`}
      aria-current={isOpen ? "true" : undefined}
      onClick={(event) => {
        event.preventDefault();
        onOpen(suspect.id);
      }}
    >
      <circle className="mark-reach" cx={at[0]} cy={at[1]} r="15.5" />
      {(spot[0] !== at[0] || spot[1] !== at[1]) && (
        <>
          <line className="mark-line" x1={spot[0]} y1={spot[1]} x2={at[0]} y2={at[1]} />
          <circle className="mark-ink" cx={spot[0]} cy={spot[1]} r="1.6" />
        </>
      )}
      <circle className="mark-ground" cx={at[0]} cy={at[1]} r={size} />
      <circle className={`mark-fill ${fill}`} cx={at[0]} cy={at[1]} r={size} />
      <circle className="mark-disc" cx={at[0]} cy={at[1]} r="6" />
      <text className="mark-number" x={at[0]} y={at[1]} dy="0.36em" textAnchor="middle">
        {rank}
      </text>
    </a>
  );
}
