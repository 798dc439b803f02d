import { stemmer } from "stemmer";
import type { Words } from "../knowledge/schema/words.ts";

/** Every kind of apostrophe that keyboards and phones make. */
const APOSTROPHES = /['\u2018\u2019\u02bc\u0060\u00b4]/gu;

/** A written word, bare: lower case, without apostrophes and the possessive s. */
export function bareWord(written: string): string {
  return written.toLowerCase().replace(APOSTROPHES, "'").replace(/'s$/u, "").replaceAll("'", "");
}

/** One word as it is compared: bare letters and the stem under which all its forms meet. */
export interface Spelled {
  readonly bare: string;
  readonly stem: string;
}

/** Turns bare words into comparable ones. */
export interface Spelling {
  /** One word may stand for two: "swaybar" is "sway bar". */
  spell(bare: string): readonly Spelled[];
}

/** Short words are their own stem: "one" is not "on". */
function stemOf(word: string): string {
  return word.length <= 3 ? word : stemmer(word);
}

/** Spelling by the lists of words.json. */
export function spellingOf(words: Words): Spelling {
  const spellings = new Map(Object.entries(words.spellings));
  const forms = new Map(Object.entries(words.forms));
  const kept = new Map<string, readonly Spelled[]>();
  const one = (bare: string): Spelled => ({ bare, stem: stemOf(forms.get(bare) ?? bare) });
  return {
    spell(bare) {
      const known = kept.get(bare);
      if (known !== undefined) return known;
      const spelled = (spellings.get(bare) ?? bare).split(" ").map(one);
      // Only words of the lists are kept: the words of a text must not make the reader grow without bound.
      if (spellings.has(bare)) kept.set(bare, spelled);
      return spelled;
    },
  };
}
