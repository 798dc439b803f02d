import type { Denials } from "./denial.ts";
import type { Hits } from "./hits.ts";
import { shareWord } from "./hits.ts";
import { firstFrom, isLimiting, type Mention, tellsComplaint } from "./mentions.ts";
import type { Hit } from "./phrases.ts";
import { FASTEST, type SpeedMention } from "./speeds.ts";
import type { Token } from "./tokens.ts";

/** Kinds of feature that can be what a state of things lasts until. */
const TURNING: ReadonlySet<string> = new Set(["moment", "speed", "direction"]);

/** The words that a text turns at: "until", and "unless" and "except", which name no end of a speed. */
interface Turn {
  readonly hit: Hit;
  readonly lasts: boolean;
}

/** A stretch of tokens, `to` exclusive. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Mentions with what "until" and "unless" make of them: "no noise until I brake" tells of a noise when braking, "it
 * knocks until I brake" of none then.
 *
 * Shape   mentions in reading order, denials marked; segments[i] is the segment of token i. Gives them in the same
 *         order, with a further one for the speeds from which on a complaint is there.
 */
export function turnAtUntil(
  tokens: readonly Token[],
  segments: readonly number[],
  mentions: readonly Mention[],
  hits: Hits,
  denials: Denials,
): Mention[] {
  const turns = [
    ...hits.of("until").map((hit): Turn => ({ hit, lasts: true })),
    ...hits.of("unless").map((hit): Turn => ({ hit, lasts: false })),
  ].sort((a, b) => a.hit.first - b.hit.first);
  const denying = new Set([...denials.negators, ...denials.gone, ...hits.of("fine")].map((hit) => hit.first));
  const negated = new Set(hits.of("negators").map((hit) => hit.last));
  const now = [...mentions];
  const further = new Map<number, Mention>();
  for (const turn of turns) {
    const { first } = turn.hit;
    const { until, main } = stretchesOf(tokens, segments, now, denying, turn.hit);
    const inMain = indexesIn(now, main);
    const inUntil = indexesIn(now, until).filter((i) => isGoverned(now[i]));
    const deniedOnes = inMain.filter((i) => now[i]?.state === "absent" && tells(now[i]));
    if (negated.has(first - 1) || firstIn(denying, main) !== undefined || deniedOnes.length > 0) {
      for (const i of deniedOnes) now[i] = { ...(now[i] as Mention), ...PRESENT };
      for (const i of inUntil) {
        const [mention, more] = turnedOn(now[i] as Mention, turn);
        now[i] = mention;
        if (more !== undefined) further.set(i, more);
      }
    } else if (tellsBefore(tokens, now, first, main)) {
      for (const i of inUntil) now[i] = turnedOff(now[i] as Mention, turn);
    }
  }
  return now.flatMap((mention, i) => [mention, ...(further.has(i) ? [further.get(i) as Mention] : [])]);
}

const PRESENT = { state: "present", ended: false, restricted: false } as const;

/** Indexes of the mentions that start in the stretch. */
function indexesIn(mentions: readonly Mention[], { from, to }: Stretch): number[] {
  const first = firstFrom(mentions, from);
  return Array.from({ length: Math.max(0, firstFrom(mentions, to) - first) }, (_, i) => first + i);
}

function tells(mention: Mention | undefined): boolean {
  return mention !== undefined && tellsComplaint(mention);
}

function firstIn(at: ReadonlySet<number>, { from, to }: Stretch): number | undefined {
  for (let i = from; i < to; i += 1) if (at.has(i)) return i;
  return undefined;
}

/** True when a complaint that is there is told before the token in its sentence, or in the stretch. */
function tellsBefore(
  tokens: readonly Token[],
  mentions: readonly Mention[],
  token: number,
  main: Stretch,
): boolean {
  const tellsIt = (mention: Mention | undefined) => mention?.state === "present" && tells(mention);
  const sentence = tokens[token]?.sentence;
  for (let i = firstFrom(mentions, token) - 1; ; i -= 1) {
    const mention = mentions[i];
    if (mention === undefined || tokens[mention.hit.first]?.sentence !== sentence) break;
    if (tellsIt(mention)) return true;
  }
  return indexesIn(mentions, main).some((i) => tellsIt(mentions[i]));
}

/** What the turn governs, and what it limits: the clause before it, or after it when it opens the sentence. */
function stretchesOf(
  tokens: readonly Token[],
  segments: readonly number[],
  mentions: readonly Mention[],
  denying: ReadonlySet<number>,
  turn: Hit,
): { until: Stretch; main: Stretch } {
  const own = stretchOf(segments, turn.first);
  const whole: Stretch = { from: turn.first, to: own.to };
  const before = stretchOf(segments, turn.first - 1);
  const opens = tokens[turn.first - 1]?.sentence !== tokens[turn.first]?.sentence;
  if (!opens) {
    const from = before.from === own.from ? own.from : before.from;
    return { until: whole, main: { from, to: turn.first } };
  }
  const rest: Stretch = { from: turn.last + 1, to: own.to };
  const told = indexesIn(mentions, rest).find((i) => tells(mentions[i]));
  const starts = [mentions[told ?? -1]?.hit.first, firstIn(denying, rest)].filter((i) => i !== undefined);
  if (starts.length > 0) {
    const cut = Math.min(...starts);
    return { until: { from: turn.first, to: cut }, main: { from: cut, to: own.to } };
  }
  const follows = tokens[own.to]?.sentence === tokens[turn.first]?.sentence;
  return { until: whole, main: follows ? stretchOf(segments, own.to) : before };
}

/** The segment that holds the token. */
function stretchOf(segments: readonly number[], i: number): Stretch {
  const segment = segments[i];
  if (segment === undefined) return { from: 0, to: 0 };
  let from = i;
  while (segments[from - 1] === segment) from -= 1;
  let to = i + 1;
  while (segments[to] === segment) to += 1;
  return { from, to };
}

function isGoverned(mention: Mention | undefined): boolean {
  if (mention === undefined || !isLimiting(mention)) return false;
  return mention.speed !== undefined || TURNING.has(mention.feature?.kind ?? "");
}

/** "No noise until I brake": it is there from then on. Gives the mention, and a further one for the speeds beyond. */
function turnedOn(mention: Mention, { hit, lasts }: Turn): [Mention, Mention?] {
  const { speed } = mention;
  // "Until it is warm" and "until 50" name the time before.
  if (shareWord(mention.hit, hit)) {
    const before: Mention = { ...mention, state: "absent" };
    return speed === undefined ? [before] : [before, at(mention, speed, speed.to, FASTEST)];
  }
  if (speed !== undefined && lasts) return [at(mention, speed, speed.from, FASTEST)];
  return [{ ...mention, state: "present" }];
}

/** "It knocks until I brake": then it is not there. */
function turnedOff(mention: Mention, { hit, lasts }: Turn): Mention {
  if (shareWord(mention.hit, hit)) return mention;
  if (mention.speed !== undefined && lasts) return at(mention, mention.speed, 0, mention.speed.to);
  return { ...mention, state: "absent" };
}

function at(mention: Mention, speed: SpeedMention, from: number, to: number): Mention {
  return { ...mention, state: "present", speed: { ...speed, from, to } };
}
