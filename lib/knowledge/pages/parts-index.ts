import type { CompiledPart, Knowledge } from "../schema/compiled.ts";
import { type CarLimit, type CarNeeds, carNeeds } from "./car-limits.ts";

/** A part in the list, with what else a car needs to have it. */
export interface ListedPart {
  readonly part: CompiledPart;
  readonly needs: readonly CarNeeds[];
}

/** Parts under one heading: a layout of an axle, or a group of parts that any layout may have. */
export interface PartsGroup {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly ListedPart[];
}

/** Parts of one stretch of the car. */
export interface PartsArea {
  readonly id: "front" | "rear" | "either" | "whole";
  /** Parts that hang on the layout, one group a layout; a part that several layouts have is in each. */
  readonly byLayout: readonly PartsGroup[];
  /** The others, by the group of the part. */
  readonly byGroup: readonly PartsGroup[];
}

/** The field of the car that says how an axle is laid out. */
const layoutOf = (axle: string) => `${axle}.layout`;

/** All parts by where they are and by the layouts that have them. */
export function partsIndex(knowledge: Knowledge): PartsArea[] {
  const listed = knowledge.parts
    .filter((part) => part.ended === undefined)
    .map((part) => ({
      part,
      needs: carNeeds(knowledge, part.when, part.places),
      area: areaOf(knowledge, part),
    }))
    .sort((a, b) => (a.part.name < b.part.name ? -1 : 1));
  return (["front", "rear", "either", "whole"] as const).flatMap((id) => {
    const own = listed.filter(({ area }) => area === id);
    const layout = layoutOf(id);
    const free = own.filter(({ needs }) => layoutsIn(needs, layout).length === 0);
    const area = { id, byLayout: byLayout(knowledge, own, layout), byGroup: byGroup(free) };
    return own.length === 0 ? [] : [area];
  });
}

function areaOf(knowledge: Knowledge, part: CompiledPart): PartsArea["id"] {
  const axles = new Set(
    knowledge.places.places.filter(({ id }) => part.places.includes(id)).map(({ axle }) => axle),
  );
  if (axles.has("none")) return "whole";
  if (axles.size > 1) return "either";
  return axles.has("front") ? "front" : "rear";
}

function layoutsIn(needs: readonly CarNeeds[], layout: string): CarLimit[] {
  return needs.flat().filter(({ path }) => path === layout);
}

function byLayout(knowledge: Knowledge, parts: readonly ListedPart[], layout: string): PartsGroup[] {
  return knowledge.car.attributes.flatMap((attribute) => {
    if (attribute.kind !== "choice" || attribute.path !== layout) return [];
    return attribute.values.flatMap(({ id, name }) => {
      const having = parts.filter(({ needs }) =>
        layoutsIn(needs, layout).some(({ values }) => values.some((value) => value.id === id)),
      );
      const other = having.map(({ part, needs }) => ({ part, needs: withoutLayout(needs, layout) }));
      const group = { id: `${layout.replace(".", "-")}-${id}`, name };
      return having.length === 0 ? [] : [{ ...group, parts: other }];
    });
  });
}

/** What is left to say of a part under the heading of a layout. */
function withoutLayout(needs: readonly CarNeeds[], layout: string): CarNeeds[] {
  const rest = needs.map((way) => way.filter(({ path }) => path !== layout));
  return rest.some((way) => way.length === 0) ? [] : rest;
}

function byGroup(parts: readonly ListedPart[]): PartsGroup[] {
  const groups = new Map<string, ListedPart[]>();
  for (const listed of parts)
    groups.set(listed.part.group, [...(groups.get(listed.part.group) ?? []), listed]);
  return [...groups]
    .map(([id, own]) => ({ id, name: id.replaceAll("-", " "), parts: own }))
    .sort((a, b) => b.parts.length - a.parts.length || (a.id < b.id ? -1 : 1));
}
