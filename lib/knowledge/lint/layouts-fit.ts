import type { LintFinding, LintRule } from "./rule.ts";

/** Every kind of axle that is drawn at all is drawn, and no other. */
export const layoutsFit: LintRule = {
  name: "layouts-fit",
  about:
    "A drawing's attribute is a value of its axle's layout in car.json, and once one value is drawn all are.",
  check: ({ knowledge }) => {
    const { layouts } = knowledge;
    const valuesOf = (axle: string) =>
      knowledge.car.attributes.flatMap((attribute) =>
        attribute.kind === "choice" && attribute.path === `${axle}.layout`
          ? attribute.values.map((value) => value.id)
          : [],
      );
    const found: LintFinding[] = [];
    for (const { id, axle, attribute } of layouts) {
      if (attribute === undefined || valuesOf(axle).includes(attribute)) continue;
      found.push({
        record: `layouts/${id}.json`,
        message: `a car's ${axle}.layout is never "${attribute}"`,
        mend: `Use one of: ${valuesOf(axle).join(", ") || "none, leave attribute out"}.`,
      });
    }
    for (const axle of new Set(layouts.map((layout) => layout.axle))) {
      const drawn = layouts.filter((layout) => layout.axle === axle).map((layout) => layout.attribute);
      if (drawn.every((attribute) => attribute === undefined)) continue;
      for (const value of valuesOf(axle).filter((id) => !drawn.includes(id))) {
        found.push({
          record: "car.json",
          message: `${axle}.layout "${value}" has no drawing`,
          mend: `Draw it as a record of layouts with "attribute": "${value}".`,
        });
      }
    }
    return found;
  },
};
