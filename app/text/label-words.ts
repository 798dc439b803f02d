import type { LabelPart } from "../../lib/case/entry-label.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import {
  capital,
  nameOfCheck,
  nameOfFinding,
  nameOfPart,
  nameOfPlace,
  nameOfRepair,
  nameOfSetUp,
  nameOfSuspect,
} from "./names.ts";

const LONGEST_QUOTE = 160;

function partWords(knowledge: Knowledge, part: LabelPart): string {
  switch (part.is) {
    case "words":
      return part.text;
    case "quote": {
      if (part.text === "") return "";
      const cut = part.text.length > LONGEST_QUOTE ? `${part.text.slice(0, LONGEST_QUOTE)}...` : part.text;
      return `"${cut}"`;
    }
    case "finding":
      return nameOfFinding(knowledge, part.id);
    case "check":
      return nameOfCheck(knowledge, part.id);
    case "suspect":
      return nameOfSuspect(knowledge, part.id);
    case "part":
      return nameOfPart(knowledge, part.id);
    case "repair":
      return nameOfRepair(knowledge, part.id);
    case "place":
      return nameOfPlace(knowledge, part.id);
    case "set-up":
      return nameOfSetUp(knowledge, part.id);
  }
}

/** What a timeline line says, in one string. */
export function labelWords(knowledge: Knowledge, label: readonly LabelPart[]): string {
  return capital(
    label
      .map((part) => partWords(knowledge, part))
      .filter((words) => words !== "")
      .join(" - "),
  );
}
