import type { CompiledFeature, Knowledge } from "../knowledge/schema/compiled.ts";
import { groupHits } from "./hits.ts";
import { featuresById } from "./mentions.ts";
import { type PhraseIndex, findPhrases, indexPhrases, wordsOfPhrases } from "./phrases.ts";
import { type Proposal, proposalsOf } from "./proposals.ts";
import { readingsOf } from "./readings.ts";
import { type Spelling, spellingOf } from "./spelling.ts";
import { tokenise } from "./tokens.ts";
import { findSides, indexSides, putSides, type SideWords, type Traffic } from "./traffic-sides.ts";
import { typoMender } from "./typos.ts";
import { findingPhrases, phrasesOf } from "./vocabulary.ts";

export interface ReadOptions {
  /** Unit of speeds that are told without one. */
  readonly speedUnit?: "mph" | "km/h";
  /** Side of the road that traffic keeps to: it makes "nearside" and "driver's side" left or right; else they stay open. */
  readonly traffic?: Traffic | undefined;
}

interface Reader {
  readonly spelling: Spelling;
  readonly index: PhraseIndex;
  readonly sides: PhraseIndex;
  readonly mend: (bare: string) => string;
  readonly features: ReadonlyMap<string, CompiledFeature>;
}

const READERS = new WeakMap<Knowledge, Reader>();

/** Longest text that is read; what goes beyond is left unread. */
const LONGEST = 40_000;

/**
 * Read an owner's or a mechanic's words and propose the findings that they tell of.
 *
 * Shape   one proposal a finding, in the order of the text; [] when nothing is recognised.
 * Errors  none: any text is read. The index of the knowledge is made on the first call and kept as long as the knowledge.
 */
export function readText(knowledge: Knowledge, text: string, options: ReadOptions = {}): Proposal[] {
  const reader = readerOf(knowledge);
  const read = text.slice(0, LONGEST);
  const written = tokenise(read, reader.spelling, reader.mend);
  const sides = findSides(written, reader.sides);
  const tokens = putSides(written, sides, options.traffic, knowledge.words, reader.spelling);
  const hits = groupHits(findPhrases(tokens, reader.index));
  const readings = readingsOf({
    knowledge,
    features: reader.features,
    text: read,
    tokens,
    hits,
    speedUnit: options.speedUnit,
  });
  return proposalsOf(knowledge, read, readings);
}

/**
 * The words of a text that are left or right by the side that traffic keeps to: "nearside", "driver's side".
 *
 * Shape   in the order of the text; [] when it has none. Errors: none.
 */
export function sidesByTraffic(knowledge: Knowledge, text: string): SideWords[] {
  const reader = readerOf(knowledge);
  const read = text.slice(0, LONGEST);
  const tokens = tokenise(read, reader.spelling, reader.mend);
  return findSides(tokens, reader.sides).map(({ first, last }) => {
    const from = tokens[first]?.from ?? 0;
    const to = tokens[last]?.to ?? from;
    return { words: read.slice(from, to), from, to };
  });
}

function readerOf(knowledge: Knowledge): Reader {
  const kept = READERS.get(knowledge);
  if (kept !== undefined) return kept;
  const { words } = knowledge;
  const spelling = spellingOf(words);
  const phrases = phrasesOf(knowledge);
  const known = new Set(words.known.flatMap((word) => stemsOf(word, spelling)));
  const { kerb, road } = words.trafficSides;
  const texts = [...phrases.map(({ text }) => text), ...kerb, ...road];
  const stems = new Set(texts.flatMap((text) => stemsOf(text, spelling)));
  // Only words that tell of a finding are worth mending towards; all words of the lists are taken as they stand.
  const vocabulary = wordsOfPhrases(findingPhrases(knowledge).map(({ text }) => text));
  for (const word of Object.keys(words.spellings)) vocabulary.add(word);
  const ordinary = (bare: string) =>
    spelling.spell(bare).some((word) => stems.has(word.stem) || known.has(word.stem));
  const reader: Reader = {
    spelling,
    index: indexPhrases(phrases, spelling),
    sides: indexSides(words, spelling),
    mend: typoMender(vocabulary, ordinary),
    features: featuresById(knowledge),
  };
  READERS.set(knowledge, reader);
  return reader;
}

function stemsOf(text: string, spelling: Spelling): string[] {
  return [...wordsOfPhrases([text])].flatMap((word) => spelling.spell(word).map((spelled) => spelled.stem));
}
