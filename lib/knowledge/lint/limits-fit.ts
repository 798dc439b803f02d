import type { LimitFigure } from "../schema/limits.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** Every limit belongs to a quantity, those of one quantity say all what is allowed or all what must be left, tables rise, and its quantity answers an observation in mm. */
export const limitsFit: LintRule = {
  name: "limits-fit",
  about:
    "In limits.json ids stand once, every limit's quantity is there and has a limit, the limits of a quantity are all a most or all a least, what must be left answers no observation, a movement has its circle and angle, tables rise with the diameter, and observations are measured in mm.",
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
    for (const { id, observation, circle, angle } of quantities) {
      const own = limits.filter((limit) => limit.quantity === id);
      if (own.length === 0) say(`quantity "${id}" has no limit`, "Add one, or remove the quantity.");
      const least = own.filter((limit) => limit.figure.kind === "least");
      if (least.length !== 0 && least.length !== own.length)
        say(`quantity "${id}": some limits are a most, others a least`, "Make two quantities of it.");
      // Grades of an observation rise with its value; the less is left, the worse.
      if (least.length !== 0 && observation !== undefined)
        say(
          `quantity "${id}" is what must be left, and the grades of "${observation}" rise with the value`,
          "Leave the observation out.",
        );
      if ((circle === undefined) !== (angle === undefined))
        say(
          `quantity "${id}" has only one of circle and angle`,
          "Give both for a movement, neither for a depth.",
        );
      if (own.some((limit) => limit.by === "circle" && goesByDiameter(limit.figure)) && circle === undefined)
        say(`quantity "${id}" has a limit by the circle, and no circle`, "Name the circle.");
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

function goesByDiameter({ kind }: LimitFigure): boolean {
  return kind !== "flat" && kind !== "least";
}

function rises(figure: LimitFigure): boolean {
  if (figure.kind === "flat" || figure.kind === "least" || figure.kind === "scaled") return true;
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
