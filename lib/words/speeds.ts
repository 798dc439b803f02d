import type { Words } from "../knowledge/schema/words.ts";
import type { Hits } from "./hits.ts";
import type { Token } from "./tokens.ts";

/** A speed told of, in km/h. */
export interface SpeedMention {
  readonly first: number;
  readonly last: number;
  readonly from: number;
  readonly to: number;
  /** The text gave no unit. */
  readonly unitAssumed: boolean;
}

const KM_PER_MILE = 1.609344;
/** No car goes faster, km/h: the end of "from 60 on". */
export const FASTEST = 300;
const SLOWEST_BARE = 15;
const FASTEST_BARE = 200;
/** What "at 50" and "around 50" leave open on either side, km/h. */
const AT = 5;
const AROUND = 8;
const LOOK_BACK = 3;

interface Figure {
  readonly value: number;
  readonly first: number;
  readonly last: number;
}

/**
 * Speeds in a text: "between 55 and 65 mph", "80-100 km/h", "over 60", "from about 20 mph", "up to fifty".
 *
 * Units   km/h. A number without unit takes the unit of the rest of the text, else the `preferred` one, else the size of
 *         the number decides (words.json speed.bareKmhFrom).
 */
export function findSpeeds(
  text: string,
  tokens: readonly Token[],
  hits: Hits,
  words: Words,
  preferred: "mph" | "km/h" | undefined,
): SpeedMention[] {
  const marks = new Marks(hits);
  const figures = figuresOf(tokens, words.numbers);
  const usual = unitOfText(hits) ?? preferred;
  const found: SpeedMention[] = [];
  for (let i = 0; i < figures.length; i += 1) {
    const low = figures[i];
    if (low === undefined) continue;
    let high = rangeEnd(text, tokens, marks, low, figures[i + 1]);
    const lowUnit = marks.startingAt(["mph", "kmh"], low.last + 1);
    const last = high ?? low;
    const unit =
      marks.startingAt(["mph", "kmh"], last.last + 1) ?? (high === undefined ? undefined : lowUnit);
    const cue = cueBefore(tokens, marks, low.first);
    if (unit === undefined) {
      if (cue === undefined || !mayBeBare(tokens, marks, last)) continue;
      if (high !== undefined && high.value <= low.value) high = undefined;
    }
    const inMph = isMph(unit?.tag, usual, last.value, words.speed.bareKmhFrom);
    const factor = inMph ? KM_PER_MILE : 1;
    const end = Math.max(last.last, unit?.last ?? 0);
    const after = openAfter(marks, end);
    const bounds = boundsOf(low.value * factor, high && high.value * factor, cue?.tag, after?.tag);
    if (high !== undefined) i += 1;
    if (bounds === undefined) continue;
    found.push({
      first: cue?.first ?? low.first,
      last: after?.last ?? end,
      ...bounds,
      unitAssumed: unit === undefined && usual === undefined,
    });
  }
  return found;
}

interface Mark {
  readonly tag: string;
  readonly first: number;
  readonly last: number;
}

/** The speed words of a text by where they start and end. */
class Marks {
  readonly #starts = new Map<number, Mark[]>();
  readonly #ends = new Map<number, Mark[]>();

  constructor(hits: Hits) {
    for (const tag of TAGS) {
      for (const { first, last } of hits.of(`speed.${tag}`)) {
        const mark = { tag, first, last };
        this.#starts.set(first, [...(this.#starts.get(first) ?? []), mark]);
        this.#ends.set(last, [...(this.#ends.get(last) ?? []), mark]);
      }
    }
  }

  /** The longest mark of one of the kinds that starts there. */
  startingAt(tags: readonly string[], i: number): Mark | undefined {
    return longest((this.#starts.get(i) ?? []).filter((mark) => tags.includes(mark.tag)));
  }

  endingAt(tags: readonly string[], i: number): Mark | undefined {
    return longest((this.#ends.get(i) ?? []).filter((mark) => tags.includes(mark.tag)));
  }
}

const TAGS = [
  "mph",
  "kmh",
  "above",
  "below",
  "around",
  "at",
  "from",
  "slowing",
  "to",
  "upward",
  "downward",
  "mayFollow",
] as const;
const CUES = ["above", "below", "from", "around", "at"];

function longest(marks: readonly Mark[]): Mark | undefined {
  return marks.reduce<Mark | undefined>(
    (best, mark) => (best === undefined || mark.last - mark.first > best.last - best.first ? mark : best),
    undefined,
  );
}

function figuresOf(tokens: readonly Token[], numbers: Readonly<Record<string, number>>): Figure[] {
  const figures: Figure[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const bare = tokens[i]?.bare ?? "";
    if (/^\d{1,3}(?:[.,]\d)?$/.test(bare)) {
      figures.push({ value: Number(bare.replace(",", ".")), first: i, last: i });
    } else if (Object.hasOwn(numbers, bare)) {
      const tens = numbers[bare] ?? 0;
      const next = tokens[i + 1]?.bare ?? "";
      const ones = Object.hasOwn(numbers, next) ? (numbers[next] ?? 0) : 0;
      const joined = tens >= 20 && tens % 10 === 0 && ones > 0 && ones < 10;
      figures.push({ value: joined ? tens + ones : tens, first: i, last: joined ? i + 1 : i });
      if (joined) i += 1;
    }
  }
  return figures;
}

/** The second number of "55 and 65", "55 to 65", "55-65", "50 mph to 60 mph"; undefined when there is none. */
function rangeEnd(
  text: string,
  tokens: readonly Token[],
  marks: Marks,
  low: Figure,
  next: Figure | undefined,
): Figure | undefined {
  if (next === undefined || next.value <= low.value) return undefined;
  const end = marks.startingAt(["mph", "kmh"], low.last + 1)?.last ?? low.last;
  const between = text.slice(tokens[end]?.to ?? 0, tokens[next.first]?.from ?? 0);
  if (next.first === end + 1) return /^\s*[-\u2010-\u2015/~]\s*$/u.test(between) ? next : undefined;
  const to = marks.startingAt(["to"], end + 1);
  if (to === undefined || to.last !== next.first - 1) return undefined;
  return next;
}

function cueBefore(tokens: readonly Token[], marks: Marks, first: number): Mark | undefined {
  let found: Mark | undefined;
  for (let i = first - 1; i >= Math.max(0, first - LOOK_BACK); i -= 1) {
    if (tokens[i]?.sentence !== tokens[first]?.sentence) break;
    const mark = marks.endingAt(CUES, i);
    if (mark === undefined) {
      if (found === undefined && i === first - 1) continue;
      break;
    }
    // "from about 20": the outer word tells the direction.
    found = found === undefined || mark.tag !== "at" ? { ...mark, last: found?.last ?? mark.last } : found;
    i = mark.first;
  }
  if (found?.tag !== "from") return found;
  for (let i = found.first - 1; i >= Math.max(0, found.first - LOOK_BACK); i -= 1) {
    if (marks.endingAt(["slowing"], i) !== undefined) return { ...found, tag: "at" };
  }
  return found;
}

function mayBeBare(tokens: readonly Token[], marks: Marks, last: Figure): boolean {
  if (last.value < SLOWEST_BARE || last.value > FASTEST_BARE) return false;
  const next = tokens[last.last + 1];
  if (next === undefined || next.clause !== tokens[last.last]?.clause) return true;
  return marks.startingAt(["mayFollow", "upward", "downward"], last.last + 1) !== undefined;
}

function unitOfText(hits: Hits): "mph" | "km/h" | undefined {
  const mph = hits.of("speed.mph").length;
  const kmh = hits.of("speed.kmh").length;
  if (mph !== kmh) return mph > kmh ? "mph" : "km/h";
  if (hits.of("speed.mphHints").length > 0) return "mph";
  return hits.of("speed.kmhHints").length > 0 ? "km/h" : undefined;
}

function isMph(unit: string | undefined, usual: string | undefined, value: number, kmhFrom: number): boolean {
  if (unit !== undefined) return unit === "mph";
  if (usual !== undefined) return usual === "mph";
  return value < kmhFrom;
}

function openAfter(marks: Marks, end: number): Mark | undefined {
  return marks.startingAt(["upward", "downward"], end + 1);
}

function boundsOf(
  low: number,
  high: number | undefined,
  cue: string | undefined,
  after: string | undefined,
): { from: number; to: number } | undefined {
  if (low > FASTEST) return undefined;
  if (high !== undefined) {
    if (after === "upward") return { from: low, to: FASTEST };
    return { from: low, to: Math.min(high, FASTEST) };
  }
  if (after === "upward") return { from: low, to: FASTEST };
  if (after === "downward") return { from: 0, to: low };
  if (cue === "above" || cue === "from") return { from: low, to: FASTEST };
  if (cue === "below") return { from: 0, to: low };
  const open = cue === "around" ? AROUND : AT;
  return { from: Math.max(0, low - open), to: Math.min(FASTEST, low + open) };
}
