import type { Knowledge, LayoutRecord, PlaceRecord } from "../../../lib/knowledge/schema/compiled.ts";
import type { Leader, Row } from "../../engine/protocol.ts";
import type { LikelyCar } from "./likely-car.ts";

export type Point = readonly [number, number];

type Shape = LayoutRecord["shapes"][number];

/** A shape as drawn: mirrored ones twice. */
export interface DrawnShape {
  readonly key: string;
  readonly shape: Shape;
  readonly points: readonly Point[];
}

/** A suspect's mark: where the part sits, and where the mark is drawn so that marks do not lie on one another. */
export interface Mark {
  readonly suspect: Leader;
  readonly rank: number;
  readonly spot: Point;
  readonly at: Point;
}

/** Room between the middles of two marks, so that a thumb hits one only. */
const ROOM = 30;
const MOST_MARKS = 8;
const SMALLEST = 0.02;

/** The layouts that make up the drawn car: the body, and the one of each axle that it has. */
export function layoutsOf(knowledge: Knowledge, { values }: LikelyCar): LayoutRecord[] {
  return knowledge.layouts.filter(
    ({ axle, attribute }) => attribute === undefined || attribute === values.get(`${axle}.layout`),
  );
}

/** Every shape of the layouts, mirrored ones on both sides; without those of parts that the drawn car does not have. */
export function drawnShapes(layouts: readonly LayoutRecord[], onCar: ReadonlySet<string>): DrawnShape[] {
  return layouts.flatMap((layout) =>
    layout.shapes.flatMap((shape, index) => {
      if (shape.parts.length > 0 && !shape.parts.some((part) => onCar.has(part))) return [];
      const key = `${layout.id}-${index}`;
      const points = shape.points as readonly Point[];
      const own = { key, shape, points };
      if (!shape.mirror) return [own];
      return [own, { key: `${key}-m`, shape, points: points.map(([x, y]): Point => [-x, y]) }];
    }),
  );
}

function middle(points: readonly Point[]): Point {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

function sideAndAxle(place: PlaceRecord | undefined): readonly [side: number, axle: number] {
  return [
    place?.side === "left" ? -1 : place?.side === "right" ? 1 : 0,
    place?.axle === "front" ? -1 : place?.axle === "rear" ? 1 : 0,
  ];
}

/** Middles of the shapes that stand for a part on the side and axle of the place; none when it is not drawn there. */
export function ownSpots(
  shapes: readonly DrawnShape[],
  part: string,
  place: PlaceRecord | undefined,
): Point[] {
  const [side, axle] = sideAndAxle(place);
  return shapes
    .filter((s) => s.shape.parts.includes(part))
    .map((s) => middle(s.points))
    .filter(([x, y]) => (side === 0 || Math.sign(x) === side) && (axle === 0 || Math.sign(y) === axle));
}

/** Where a part of a suspect sits: its own shape on the right side and axle, or a spot at its place. */
export function spotOf(shapes: readonly DrawnShape[], part: string, place: PlaceRecord | undefined): Point {
  const [side, axle] = sideAndAxle(place);
  const own = ownSpots(shapes, part, place);
  if (own.length > 0 && side === 0) {
    // A part of the whole axle that is drawn on both sides: its mark goes to the middle.
    const [first] = own as [Point, ...Point[]];
    return own.length === 1 ? first : [0, first[1]];
  }
  return own[0] ?? [side * 62, axle * 75];
}

/** Marks of the likeliest suspects, moved apart where they would cover one another. */
export function placeMarks(
  knowledge: Knowledge,
  shapes: readonly DrawnShape[],
  rows: readonly Row[],
): Mark[] {
  const marks = rows
    .flatMap((row, index) => row.members.map((suspect) => ({ suspect, rank: index + 1 })))
    .slice(0, MOST_MARKS)
    .filter(({ suspect }) => suspect.explains >= SMALLEST)
    .map(({ suspect, rank }) => {
      const place = knowledge.places.places.find((p) => p.id === suspect.place);
      const spot = spotOf(shapes, suspect.part, place);
      return { suspect, rank, spot, at: [spot[0], spot[1]] as [number, number] };
    });
  for (let round = 0; round < 80; round++) {
    for (let i = 0; i < marks.length; i++) {
      for (let j = i + 1; j < marks.length; j++) pushApart(marks[i]?.at, marks[j]?.at, i - j);
    }
    for (const { at } of marks) {
      at[0] = Math.min(94, Math.max(-94, at[0]));
      at[1] = Math.min(118, Math.max(-118, at[1]));
    }
  }
  return marks;
}

function pushApart(a: [number, number] | undefined, b: [number, number] | undefined, tie: number): void {
  if (a === undefined || b === undefined) return;
  let dx = b[0] - a[0];
  let dy = b[1] - a[1];
  if (dx === 0 && dy === 0) {
    // Two at one spot: part them in a direction that differs from pair to pair.
    dx = Math.cos(tie);
    dy = Math.sin(tie);
  }
  const distance = Math.hypot(dx, dy);
  const push = (ROOM - distance) / 2;
  if (push <= 0) return;
  a[0] -= (dx / distance) * push;
  a[1] -= (dy / distance) * push;
  b[0] += (dx / distance) * push;
  b[1] += (dy / distance) * push;
}
