import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Sense } from "./phrases.ts";

/** Every phrase that free text is read with, and what it stands for. */
export function phrasesOf(knowledge: Knowledge): (readonly [Sense, string])[] {
  return [...findingPhrases(knowledge), ...listPhrases(knowledge)];
}

/** Phrases of complaints, features, contexts and observations; a name that is one line is a phrase too. */
export function findingPhrases(knowledge: Knowledge): (readonly [Sense, string])[] {
  const kinds = {
    complaint: knowledge.complaints,
    feature: knowledge.features,
    context: knowledge.contexts,
    observation: knowledge.observations,
  };
  return Object.entries(kinds).flatMap(([tag, records]) =>
    records.flatMap((record) =>
      [...record.phrases, ...record.otherNames].map((text) => [{ tag, id: record.id }, text] as const),
    ),
  );
}

function listPhrases(knowledge: Knowledge): (readonly [Sense, string])[] {
  const { words } = knowledge;
  const lists: Record<string, readonly string[]> = {
    newClause: words.newClause,
    noMeaning: words.noMeaning,
    negators: words.negators,
    without: words.without,
    notNegating: words.notNegating,
    gone: words.gone,
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
    list.map((text) => [{ tag, id: tag }, text] as const),
  );
}
