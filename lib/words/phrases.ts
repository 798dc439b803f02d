import type { Spelling } from "./spelling.ts";
import { bareWord } from "./spelling.ts";
import type { Token } from "./tokens.ts";

/** What a phrase stands for: a kind of record or a list of words.json, and the id in it. */
export interface Sense {
  readonly tag: string;
  readonly id: string;
}

/** One word of a phrase: the stems it accepts, and the exact words (written "=braking"). */
interface Slot {
  readonly stems: ReadonlySet<string>;
  readonly exact: ReadonlySet<string>;
  /** It follows the word before at once: the second half of "off-centre", or of a word written in one ("pothole"). */
  readonly tight: boolean;
}

/** A phrase as authored, and how many other words may stand between two of its words. */
export interface PhraseText {
  readonly sense: Sense;
  readonly text: string;
  readonly gap: number;
  /** Bare words that it reaches further off, and across a mark: "discs changed. It made no difference". */
  readonly outcome?: ReadonlySet<string> | undefined;
}

interface Phrase {
  readonly sense: Sense;
  readonly gap: number;
  readonly outcome: ReadonlySet<string> | undefined;
  readonly slots: readonly Slot[];
}

/** A phrase found in the text; `at` holds the tokens that are its words. */
export interface Hit {
  readonly sense: Sense;
  readonly at: readonly number[];
  readonly first: number;
  readonly last: number;
}

/** How many other words may stand before a word of the outcome, and from which word of a phrase on one is looked for. */
const OUTCOME_GAP = 6;
const OUTCOME_FROM = 2;

/** Phrases by the key of their first word. */
export type PhraseIndex = ReadonlyMap<string, readonly Phrase[]>;

/** Index of phrases. */
export function indexPhrases(phrases: readonly PhraseText[], spelling: Spelling): PhraseIndex {
  const index = new Map<string, Phrase[]>();
  const seen = new Set<string>();
  for (const { sense, text, gap, outcome } of phrases) {
    const slots = slotsOf(text, spelling);
    const [head] = slots;
    const key = JSON.stringify([
      sense,
      gap,
      slots.map((slot) => [[...slot.stems], [...slot.exact], slot.tight]),
    ]);
    if (head === undefined || seen.has(key)) continue;
    seen.add(key);
    for (const start of [...head.stems, ...[...head.exact].map((word) => `=${word}`)]) {
      const list = index.get(start);
      if (list === undefined) index.set(start, [{ sense, gap, outcome, slots }]);
      else list.push({ sense, gap, outcome, slots });
    }
  }
  return index;
}

/** Every phrase of the index that the tokens hold; words in order, at most two others between, within one clause. */
export function findPhrases(tokens: readonly Token[], index: PhraseIndex): Hit[] {
  const hits: Hit[] = [];
  tokens.forEach((token, first) => {
    for (const key of [token.stem, `=${token.bare}`]) {
      for (const phrase of index.get(key) ?? []) {
        const at = follow(tokens, first, phrase);
        if (at !== undefined) hits.push({ sense: phrase.sense, at, first, last: at[at.length - 1] ?? first });
      }
    }
  });
  return hits;
}

/** The bare words that phrases are made of. */
export function wordsOfPhrases(texts: Iterable<string>): Set<string> {
  const words = new Set<string>();
  for (const text of texts) {
    for (const word of text.split(/[\s|=-]+/u)) if (word !== "") words.add(bareWord(word));
  }
  return words;
}

function follow(tokens: readonly Token[], first: number, phrase: Phrase): number[] | undefined {
  const at = [first];
  let last = first;
  for (const slot of phrase.slots.slice(1)) {
    const next =
      nextMatch(tokens, last, slot, slot.tight ? 0 : phrase.gap) ??
      (at.length < OUTCOME_FROM ? undefined : nextOutcome(tokens, last, slot, phrase.outcome));
    if (next === undefined) return undefined;
    at.push(next);
    last = next;
  }
  return at;
}

function nextMatch(tokens: readonly Token[], last: number, slot: Slot, gap: number): number | undefined {
  const clause = tokens[last]?.clause;
  for (let i = last + 1; i <= last + 1 + gap; i += 1) {
    const token = tokens[i];
    if (token === undefined || token.clause !== clause) return undefined;
    if (slot.stems.has(token.stem) || slot.exact.has(token.bare)) return i;
  }
  return undefined;
}

/** How the work turned out is often told in the next clause: "they changed the discs. It made no difference". */
function nextOutcome(
  tokens: readonly Token[],
  last: number,
  slot: Slot,
  outcome: ReadonlySet<string> | undefined,
): number | undefined {
  if (outcome === undefined || ![...slot.exact, ...slot.stems].some((word) => outcome.has(word))) return;
  const clause = tokens[last]?.clause ?? 0;
  for (let i = last + 1; i <= last + 1 + OUTCOME_GAP; i += 1) {
    const token = tokens[i];
    if (token === undefined || token.clause > clause + 1) return undefined;
    const fits = slot.stems.has(token.stem) || slot.exact.has(token.bare);
    if (fits && outcome.has(token.bare)) return i;
  }
  return undefined;
}

/** "speed bump|hump" -> slots; a word that is written in two ("off-centre") gives two slots. */
function slotsOf(text: string, spelling: Spelling): Slot[] {
  return text.split(/\s+/u).flatMap((choices) => {
    const rows = choices
      .split("|")
      .filter((choice) => choice !== "")
      .map((choice) => rowOf(choice, spelling));
    const longest = Math.max(0, ...rows.map((row) => row.length));
    // Alternatives of unequal length ("pothole|hole" is "pot hole|hole") meet at their last word.
    const fewest = Math.min(longest, ...rows.map((row) => row.length));
    return Array.from({ length: fewest }, (_, i) =>
      merge(
        rows.map((row) => row.at(i - fewest)),
        i > 0,
      ),
    );
  });
}

interface Word {
  readonly stem: string;
  readonly exact: string | undefined;
}

function rowOf(choice: string, spelling: Spelling): Word[] {
  const exact = choice.startsWith("=");
  return choice
    .replace(/^=/u, "")
    .split("-")
    .filter((part) => part !== "")
    .flatMap((part) => spelling.spell(bareWord(part)))
    .map((word) => ({ stem: word.stem, exact: exact ? word.bare : undefined }));
}

function merge(words: readonly (Word | undefined)[], tight: boolean): Slot {
  const given = words.filter((word) => word !== undefined);
  return {
    stems: new Set(given.filter((word) => word.exact === undefined).map((word) => word.stem)),
    exact: new Set(given.flatMap((word) => (word.exact === undefined ? [] : [word.exact]))),
    tight,
  };
}
