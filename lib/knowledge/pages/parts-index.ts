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

/** A field of the car that says how an axle is laid out. */
const LAYOUT = /\.layout$/;

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
    const bound = own.filter(({ needs }) => layoutsIn(needs).length > 0);
    const free = own.filter(({ needs }) => layoutsIn(needs).length === 0);
    const area = { id, byLayout: byLayout(knowledge, bound), byGroup: byGroup(free) };
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

function layoutsIn(needs: readonly CarNeeds[]): CarLimit[] {
  return needs.flat().filter(({ path }) => LAYOUT.test(path));
}

function byLayout(knowledge: Knowledge, parts: readonly ListedPart[]): PartsGroup[] {
  return knowledge.car.attributes.flatMap((attribute) => {
    if (attribute.kind !== "choice" || !LAYOUT.test(attribute.path)) return [];
    return attribute.values.flatMap(({ id, name }) => {
      const having = parts.filter(({ needs }) =>
        layoutsIn(needs).some(
          ({ path, values }) => path === attribute.path && values.some((v) => v.id === id),
        ),
      );
      const other = having.map(({ part, needs }) => ({ part, needs: withoutLayouts(needs) }));
      const group = { id: `${attribute.path.replace(".", "-")}-${id}`, name: `${attribute.name}: ${name}` };
      return having.length === 0 ? [] : [{ ...group, parts: other }];
    });
  });
}

/** What is left to say of a part under the heading of a layout. */
function withoutLayouts(needs: readonly CarNeeds[]): CarNeeds[] {
  const rest = needs.map((way) => way.filter(({ path }) => !LAYOUT.test(path)));
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
