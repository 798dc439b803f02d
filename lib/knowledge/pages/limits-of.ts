import type { Knowledge } from "../schema/compiled.ts";
import type { Limits } from "../schema/limits.ts";

type Limit = Limits["limits"][number];

/** A published limit that an observation is held against. */
export interface LimitOf {
  readonly limit: Limit;
  readonly quantity: Limits["quantities"][number];
  /** Its figure in words, in the unit of its rule: "2 in up to 16 in, 2.5 in from 20 in". */
  readonly figure: string;
}

/** Published limits of what an observation measures, in the order of the knowledge. */
export function limitsOf({ limits }: Pick<Knowledge, "limits">, observation: string): LimitOf[] {
  return limits.quantities
    .filter((quantity) => quantity.observation === observation)
    .flatMap((quantity) =>
      limits.limits
        .filter((limit) => limit.quantity === quantity.id)
        .map((limit) => ({ limit, quantity, figure: figureWords(limit) })),
    );
}

/** The figure of a limit in words, in the unit of its rule. */
export function figureWords({ figure, unit, by }: Pick<Limit, "figure" | "unit" | "by">): string {
  const size = (value: number) => `${value} ${unit}`;
  const across = by === "rim" ? "of rim" : "across";
  switch (figure.kind) {
    case "flat":
      return size(figure.most);
    case "least":
      return `at least ${size(figure.least)}`;
    case "scaled":
      return `${size(figure.most)} for every ${size(figure.on)} ${across}`;
    case "steps": {
      const last = figure.steps.at(-1);
      const steps = figure.steps.map(({ upTo, most }) => `${size(most)} up to ${size(upTo)} ${across}`);
      return [...steps, `${size(figure.above)} above ${size(last?.upTo ?? 0)}`].join(", ");
    }
    case "line":
      return figure.points
        .map(({ at, most }, i) => {
          const end = i === 0 ? " or less" : i === figure.points.length - 1 ? " or more" : "";
          return `${size(most)} at ${size(at)} ${across}${end}`;
        })
        .join(", ");
  }
}
