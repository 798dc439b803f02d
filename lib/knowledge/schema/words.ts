import { z } from "zod";
import { Id, Line, Paragraph } from "./common.ts";

/** Words or phrases, in the form that `Phrases` in common.ts describes. */
const PhraseList = z.array(Line).max(400);

/** `words.json`: the words of ordinary English that free text is read with. */
export const Words = z.strictObject({
  about: Paragraph,
  /** How a word is also written -> the words it stands for: "tire" -> "tyre", "swaybar" -> "sway bar". */
  spellings: z.record(Line, Line),
  /** Irregular form -> base form: "shook" -> "shake". */
  forms: z.record(Line, Line),
  numbers: z.record(Line, z.number().int().min(0).max(1000)),
  /** Ordinary words that look like a slip in a word of the trade but are none. */
  known: z.array(Line).max(6000),
  /** Words that begin a new clause: a negation does not reach across them. */
  newClause: PhraseList,
  /** Turns of phrase whose words mean nothing here: "came back", "right away". */
  noMeaning: PhraseList,
  negators: PhraseList,
  /** Negators that lift an earlier one: "cannot brake without a squeal". */
  without: PhraseList,
  /** What was said before them holds up to the moment named after them: "no noise until I brake". */
  until: PhraseList.default([]),
  /** What was said before them does not hold at the moment named after them: "no noise unless I brake". */
  unless: PhraseList.default([]),
  /** Negations that deny nothing of the car: "no idea", "cannot tell". */
  notNegating: PhraseList,
  /** What ends a trouble; after a negator they void it: "does not go away", "did not cure the shake". */
  gone: PhraseList,
  /** Said after `gone`, they make it a passing end: "gone once it moves", "goes away for a moment". */
  whileItLasts: PhraseList.default([]),
  /** Said after an end, they take it back: "it went away, but now it is back". */
  returned: PhraseList.default([]),
  undone: PhraseList,
  cured: PhraseList,
  /** All is well at the moments named beside it: "fine", "quiet". */
  fine: PhraseList,
  /** It was so once: "used to". */
  former: PhraseList,
  /** It is so now, after all. */
  stillSo: PhraseList,
  hedges: PhraseList,
  /** "only when ...", and the features that this denies. */
  only: z.strictObject({ phrases: PhraseList, rulesOut: z.array(Id) }),
  /** Makes an event a habit, and so a moment: "whenever I hit a pothole". */
  habit: PhraseList,
  /** Makes it an event again: "it began when I hit a kerb". */
  lately: PhraseList,
  /** Work that was not done: "needs new pads". */
  wanted: PhraseList,
  longAgo: PhraseList,
  /** Single words, bare, that tell how work turned out, also in the clause after it: "new discs. It made no difference". */
  outcome: z.array(Line).max(60).default([]),
  /** Feature that says where it seems to come from, for each facet of a place. */
  sides: z.strictObject({ front: Id, rear: Id, left: Id, right: Id }),
  /** Words of the side by the kerb and of the one by the middle of the road, and what is read in their place. */
  trafficSides: z
    .strictObject({ kerb: PhraseList, road: PhraseList, left: Line, right: Line, open: Line })
    .default({ kerb: [], road: [], left: "left", right: "right", open: "side" }),
  levels: z.strictObject({ least: PhraseList, most: PhraseList }),
  speed: z.strictObject({
    mph: PhraseList,
    kmh: PhraseList,
    above: PhraseList,
    below: PhraseList,
    around: PhraseList,
    at: PhraseList,
    from: PhraseList,
    /** Words before "from" that make it a point: "braking from 60". */
    slowing: PhraseList,
    to: PhraseList,
    upward: PhraseList,
    downward: PhraseList,
    /** Words that may follow a speed without unit; another word makes the number something else. */
    mayFollow: PhraseList,
    /** Words that tell the unit of a number without one, anywhere in the text. */
    mphHints: PhraseList,
    kmhHints: PhraseList,
    /** Without any hint: numbers from here on are km/h, lower ones mph. */
    bareKmhFrom: z.number().positive(),
  }),
});
export type Words = z.infer<typeof Words>;
