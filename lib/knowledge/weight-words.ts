import type { WeightChange } from "./diff.ts";
import type { Knowledge } from "./schema/compiled.ts";

/** A weight of `weightsOf` (or a prior) for people. */
export interface WeightWords {
  /** What it belongs to: "lower ball joint: worn, with play". */
  readonly subject: string;
  /** What it says of it: "how often it gives play at 12 and 6 o'clock". */
  readonly says: string;
  /** Part whose page tells more. */
  readonly part: string | undefined;
}

/**
 * The name of a weight in words.
 *
 * Shape  name: as `weightsOf` and `diffKnowledge` name weights. What the knowledge does not hold keeps its id, with spaces for hyphens.
 */
export function weightWords(knowledge: Knowledge, name: string): WeightWords {
  const [record = "", ...rest] = name.split(" ");
  const [kind = "", id = ""] = record.split("/");
  const [field = "", of = "", more] = rest.join(" ").split(".");
  const named = (list: readonly { readonly id: string; readonly name: string }[], key: string) =>
    list.find((entry) => entry.id === key)?.name ?? key.replaceAll("-", " ");
  const plain = (subject: string, says: string): WeightWords => ({ subject, says, part: undefined });
  switch (kind) {
    case "complaints":
      return plain(
        named(knowledge.complaints, id),
        "chance of it from causes that the knowledge does not hold",
      );
    case "features":
      return plain(
        named(knowledge.features, id),
        field === "background"
          ? "chance of it when the cause lies outside the knowledge"
          : "chance of it for a fault that does not name it",
      );
    case "observations": {
      const graded = (knowledge.observations.find((entry) => entry.id === id)?.levels.length ?? 1) > 1;
      return plain(
        named(knowledge.observations, id),
        `chance of it without any fault behind it${graded ? ` (${of})` : ""}`,
      );
    }
    case "contexts":
      return plain(named(knowledge.contexts, id), "share of cars that it is true of");
  }
  const fault = knowledge.faults.find((entry) => entry.id === id);
  const part = fault === undefined ? undefined : named(knowledge.parts, fault.part);
  const words = (says: string): WeightWords => ({
    subject: part === undefined ? id.replaceAll("-", " ") : `${part}: ${fault?.name}`,
    says,
    part: fault?.part,
  });
  switch (field) {
    case "prior":
      return words("chance on a car of which nothing is known");
    case "share":
      return words("share of cars that have it");
    case "contexts":
      return words(`factor on its odds after: ${named(knowledge.contexts, of)}`);
    case "shows": {
      const [complaint = ""] = of.split("#");
      const shown = named(knowledge.complaints, complaint);
      if (more === undefined) return words(`how often it shows as ${shown}`);
      return words(`when it shows as ${shown}, how often: ${named(knowledge.features, more)}`);
    }
    case "links": {
      const levels = knowledge.observations.find((entry) => entry.id === of)?.levels ?? [];
      const grade = levels.length > 1 ? ` (${levels[Number(more)] ?? more})` : "";
      return words(`how often it gives ${named(knowledge.observations, of)}${grade}`);
    }
    default:
      return words(rest.join(" "));
  }
}

/** A change of a weight in words: "from 0.02 to 0.04, odds times 2.0 (log-odds +0.71)". */
export function changeWords({ from, to, logOddsDelta }: WeightChange): string {
  const factor = Math.exp(Math.abs(logOddsDelta));
  const times = factor >= 10 ? factor.toFixed(0) : factor.toFixed(factor < 1.095 ? 2 : 1);
  const odds = logOddsDelta > 0 ? `times ${times}` : `divided by ${times}`;
  const delta = `${logOddsDelta > 0 ? "+" : "\u2212"}${Math.abs(logOddsDelta).toFixed(2)}`;
  return `from ${figure(from)} to ${figure(to)}, odds ${odds} (log-odds ${delta})`;
}

/** Three figures that count, without the tail of zeros. */
function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
