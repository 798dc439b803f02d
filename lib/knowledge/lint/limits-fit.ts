import type { LimitFigure } from "../schema/limits.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** Every limit belongs to a quantity, its table rises, and its quantity answers an observation in mm. */
export const limitsFit: LintRule = {
  name: "limits-fit",
  about:
    "In limits.json ids stand once, every limit's quantity is there and has a limit, tables rise with the diameter, and observations are measured in mm.",
  check: ({ knowledge, observations }) => {
    const { quantities, limits } = knowledge.limits;
    const found: LintFinding[] = [];
    const say = (message: string, mend: string) => found.push({ record: "limits.json", message, mend });
    for (const [list, records] of Object.entries({ quantities, limits })) {
      records.forEach(({ id }, i) => {
        if (records.findIndex((other) => other.id === id) !== i)
          say(`${list}.${i}: the id "${id}" stands twice`, "Give it another.");
      });
    }
    for (const { id, observation } of quantities) {
      if (!limits.some((limit) => limit.quantity === id))
        say(`quantity "${id}" has no limit`, "Add one, or remove the quantity.");
      if (observation !== undefined && observations.get(observation)?.measure?.unit !== "mm")
        say(`quantity "${id}": "${observation}" is not measured in mm`, "Name one that is, or leave it out.");
    }
    for (const { id, quantity, figure } of limits) {
      if (!quantities.some((q) => q.id === quantity)) {
        const ids = quantities.map((q) => q.id).join(", ");
        say(`limit "${id}" is of an unknown quantity "${quantity}"`, `Use one of: ${ids}.`);
      }
      if (!rises(figure))
        say(`limit "${id}": its table does not rise with the diameter`, "Put its rows in order.");
    }
    return found;
  },
};

function rises(figure: LimitFigure): boolean {
  if (figure.kind === "flat" || figure.kind === "scaled") return true;
  const rows: { at: number; most: number }[] =
    figure.kind === "line"
      ? figure.points
      : [
          ...figure.steps.map(({ upTo, most }) => ({ at: upTo, most })),
          { at: Number.POSITIVE_INFINITY, most: figure.above },
        ];
  return rows.every((row, i) => {
    const before = rows[i - 1];
    return before === undefined || (row.at > before.at && row.most >= before.most);
  });
}
