import type { LintFinding, LintRule } from "./rule.ts";

/** A drawing stands for a kind of car that there is. */
export const layoutsFit: LintRule = {
  name: "layouts-fit",
  about: "A layout's attribute is a choice of car.json, and the layout's id one of its values.",
  check: ({ knowledge }) => {
    const choices = new Map(
      knowledge.car.attributes.flatMap((attribute) =>
        attribute.kind === "choice"
          ? [[attribute.path, attribute.values.map((value) => value.id)] as const]
          : [],
      ),
    );
    const found: LintFinding[] = [];
    for (const { id, attribute } of knowledge.layouts) {
      if (attribute === undefined || choices.get(attribute)?.includes(id)) continue;
      found.push({
        record: `layouts/${id}.json`,
        message: `a car's "${attribute}" is never "${id}"`,
        mend: `Use one of: ${(choices.get(attribute) ?? [...choices.keys()]).join(", ")}.`,
      });
    }
    return found;
  },
};
