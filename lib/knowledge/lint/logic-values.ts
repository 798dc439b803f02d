import { logicOf } from "../unresolved.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** A rule compares a choice only with values that it can have. */
export const logicValues: LintRule = {
  name: "logic-values",
  about: "A rule compares a car's choice, or a place, only with values that it can have.",
  check: ({ knowledge, authored }) => {
    const allowed = new Map<string, ReadonlySet<unknown>>();
    for (const attribute of knowledge.car.attributes) {
      if (attribute.kind === "choice") {
        allowed.set(attribute.path, new Set(attribute.values.map((value) => value.id)));
      }
    }
    const { places } = knowledge.places;
    allowed.set("place.id", new Set(places.map((place) => place.id)));
    allowed.set("place.axle", new Set(places.map((place) => place.axle)));
    allowed.set("place.side", new Set(places.map((place) => place.side)));
    const found: LintFinding[] = [];
    for (const { file, path, rule } of logicOf(authored)) {
      for (const [read, value] of comparisons(rule)) {
        const values = allowed.get(read);
        if (values === undefined || values.has(value)) continue;
        found.push({
          record: file,
          message: `${path}: "${read}" is never ${JSON.stringify(value)}`,
          mend: `Use one of: ${[...values].join(", ")}.`,
        });
      }
    }
    return found;
  },
};

/** Every (path, literal) that `==`, `!=` and `in` compare. */
function comparisons(rule: unknown): [string, unknown][] {
  if (Array.isArray(rule)) return rule.flatMap(comparisons);
  if (typeof rule !== "object" || rule === null) return [];
  return Object.entries(rule).flatMap(([operator, args]): [string, unknown][] => {
    if (!["==", "!=", "in"].includes(operator) || !Array.isArray(args)) return comparisons(args);
    const paths = args.flatMap(pathOf);
    const literals = args.flat().filter((arg) => typeof arg !== "object");
    return paths.flatMap((path) => literals.map((literal): [string, unknown] => [path, literal]));
  });
}

function pathOf(arg: unknown): string[] {
  if (typeof arg !== "object" || arg === null || !Object.hasOwn(arg, "var")) return [];
  const [path] = [(arg as { var: unknown }).var].flat();
  return typeof path === "string" ? [path] : [];
}
