import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { PhraseText } from "./phrases.ts";

/** Other words that may stand between two words: of a phrase, of a name, of a list of words.json. */
const GAP = { phrase: 2, name: 0, list: 1 };

/** Every phrase that free text is read with, and what it stands for. */
export function phrasesOf(knowledge: Knowledge): PhraseText[] {
  return [...findingPhrases(knowledge), ...listPhrases(knowledge)];
}

/** Phrases and other names of complaints, features, contexts and observations. */
export function findingPhrases(knowledge: Knowledge): PhraseText[] {
  const kinds = {
    complaint: knowledge.complaints,
    feature: knowledge.features,
    context: knowledge.contexts,
    observation: knowledge.observations,
  };
  const outcomes = new Set(knowledge.words.outcome);
  return Object.entries(kinds).flatMap(([tag, records]) => {
    const outcome = tag === "context" ? outcomes : undefined;
    return records.flatMap((record) => [
      ...record.phrases.map((text) => ({ sense: { tag, id: record.id }, text, gap: GAP.phrase, outcome })),
      ...record.otherNames.map((text) => ({ sense: { tag, id: record.id }, text, gap: GAP.name })),
    ]);
  });
}

function listPhrases(knowledge: Knowledge): PhraseText[] {
  const { words } = knowledge;
  const lists: Record<string, readonly string[]> = {
    newClause: words.newClause,
    noMeaning: words.noMeaning,
    negators: words.negators,
    without: words.without,
    until: words.until,
    unless: words.unless,
    notNegating: words.notNegating,
    gone: words.gone,
    whileItLasts: words.whileItLasts,
    returned: words.returned,
    undone: words.undone,
    cured: words.cured,
    fine: words.fine,
    former: words.former,
    stillSo: words.stillSo,
    hedges: words.hedges,
    only: words.only.phrases,
    habit: words.habit,
    lately: words.lately,
    wanted: words.wanted,
    longAgo: words.longAgo,
    "levels.least": words.levels.least,
    "levels.most": words.levels.most,
  };
  for (const [name, list] of Object.entries(words.speed)) {
    if (Array.isArray(list)) lists[`speed.${name}`] = list;
  }
  return Object.entries(lists).flatMap(([tag, list]) =>
    list.map((text) => ({ sense: { tag, id: tag }, text, gap: GAP.list })),
  );
}
