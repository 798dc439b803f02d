import type { Spelled, Spelling } from "./spelling.ts";
import { bareWord } from "./spelling.ts";

/** One word of the text. */
export interface Token {
  readonly bare: string;
  readonly stem: string;
  /** Offsets into the text, `to` exclusive. */
  readonly from: number;
  readonly to: number;
  /** Count of sentence ends, and of all marks that part clauses, before it. */
  readonly sentence: number;
  readonly clause: number;
  /** It was read as a slip of the pen. */
  readonly mended: boolean;
}

/** Mends a bare word that is a slip of a known one; the word itself otherwise. */
export type Mend = (bare: string) => string;

const WORD = /\d+(?:[.,]\d+)*|[\p{L}\p{M}]+(?:['\u2018\u2019\u02bc\u0060\u00b4]\p{L}+)*|[&+]/gu;
const SENTENCE_END = /[!?\n\r\u2026\u2022]|\.(?!\d)/u;
const CLAUSE_END = /[,;:()\u2013\u2014"\u201c\u201d]|\s-+\s/u;

/**
 * Cut a text into words with their places in it.
 *
 * Shape   tokens in reading order; a word that stands for two ("tierod") gives two tokens over the same letters.
 */
export function tokenise(text: string, spelling: Spelling, mend: Mend): Token[] {
  const tokens: Token[] = [];
  const read = new Map<string, Reading>();
  let sentence = 0;
  let clause = 0;
  let end = 0;
  for (const match of text.matchAll(WORD)) {
    const from = match.index;
    const to = from + match[0].length;
    const between = text.slice(end, from);
    if (tokens.length > 0 && SENTENCE_END.test(between)) {
      sentence += 1;
      clause += 1;
    } else if (tokens.length > 0 && CLAUSE_END.test(between)) {
      clause += 1;
    }
    const known = read.get(match[0]) ?? readWord(match[0], spelling, mend);
    read.set(match[0], known);
    for (const { bare, stem } of known.words) {
      tokens.push({ bare, stem, from, to, sentence, clause, mended: known.mended });
    }
    end = to;
  }
  return tokens;
}

interface Reading {
  readonly words: readonly Spelled[];
  readonly mended: boolean;
}

function readWord(written: string, spelling: Spelling, mend: Mend): Reading {
  const bare = bareWord(written);
  const mended = mend(bare);
  return { words: spelling.spell(mended), mended: mended !== bare };
}
