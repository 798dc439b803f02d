import { strengthWords } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { percent } from "../../text/chance-words.ts";

/** How often, as a word of the scale and as a figure. */
export function Strength({ knowledge, p }: { readonly knowledge: Knowledge; readonly p: number }) {
  return (
    <span className="strength">
      {strengthWords(knowledge, p)} <span className="number soft">({percent(p)})</span>
    </span>
  );
}
