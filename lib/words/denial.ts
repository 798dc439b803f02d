import type { Hits } from "./hits.ts";
import { coveredBy, hitsByToken, shareWord } from "./hits.ts";
import type { Mention } from "./mentions.ts";
import { complaintOf, firstFrom, isLimiting, tellsComplaint } from "./mentions.ts";
import type { Hit } from "./phrases.ts";
import type { Token } from "./tokens.ts";

/** How many words a negator reaches over, and how near a word must follow it to void it. */
const REACH = 7;
const VOID_REACH = 4;
const FORMER_REACH = 6;
const LIFT_REACH = 9;
const RETURN_REACH = 30;
/** A negator with fewer words than this after it ends its clause. */
const ELLIPSIS = 2;
/** Longest part of a list that a denial is carried through: "no shaking, loud knock or pull". */
const LIST_PART = 3;
const LIST_PARTS = 8;
/** How many mentions back "it is gone" looks for what is gone. */
const GONE_BACK = 12;

/** The words of a text that deny, freed of those that deny nothing. */
export interface Denials {
  readonly negators: readonly Hit[];
  readonly gone: readonly Hit[];
  readonly cured: readonly Hit[];
}

/** The negators and endings that stand: "no idea" denies nothing, "does not go away" ends nothing. */
export function standingDenials(tokens: readonly Token[], hits: Hits, phrases: readonly Hit[]): Denials {
  const idle = hitsByToken([...hits.of("notNegating"), ...hits.of("noMeaning")]);
  const own = hitsByToken(phrases.filter((hit) => hit.at.length > 1));
  const ends = [...hits.of("gone"), ...hits.of("undone")];
  const all = hits.of("negators").filter((hit) => !idle(hit).some((other) => coveredBy(hit, other)));
  const precedes = (a: Hit, b: Hit) => a.last < b.first && b.first - a.last <= VOID_REACH;
  const lifted = liftedNegators(tokens, hits);
  const negators = all.filter(
    (hit) =>
      !lifted.has(hit) &&
      !ends.some((end) => precedes(hit, end) && !own(end).some((other) => coveredBy(end, other))) &&
      !own(hit).some((other) => coveredBy(hit, other)),
  );
  // "Down onto its stops over a hump" ends nothing.
  const gone = hits
    .of("gone")
    .filter((hit) => !own(hit).some((other) => other.sense.tag === "complaint" && shareWord(hit, other)))
    .filter((hit) => !idle(hit).some((other) => coveredBy(hit, other)))
    .filter((hit) => !all.some((negator) => precedes(negator, hit) || isWithin(negator, hit)));
  const cured = hits.of("cured").filter((hit) => !all.some((negator) => precedes(negator, hit)));
  const returned = new Set(hits.of("returned").map((hit) => hit.first));
  const stays = (hit: Hit) => !returnsAfter(hit, returned, tokens);
  return { negators, gone: gone.filter(stays), cured: cured.filter(stays) };
}

/** True when it is said to be back, in the sentence of the ending or the next one. */
function returnsAfter(ending: Hit, returned: ReadonlySet<number>, tokens: readonly Token[]): boolean {
  const sentence = tokens[ending.last]?.sentence ?? 0;
  for (let i = ending.last + 1; i <= ending.last + RETURN_REACH; i += 1) {
    if ((tokens[i]?.sentence ?? Infinity) > sentence + 1) return false;
    if (returned.has(i)) return true;
  }
  return false;
}

/** Pairs that cancel out: "cannot drive without", "never ... unless". */
function liftedNegators(tokens: readonly Token[], hits: Hits): ReadonlySet<Hit> {
  const negators = hits.of("negators");
  const withouts = new Set(hits.of("without").map((hit) => hit.first));
  const lifted = new Set<Hit>();
  negators.forEach((hit, i) => {
    const earlier = negators[i - 1];
    if (earlier === undefined || !withouts.has(hit.first) || withouts.has(earlier.first)) return;
    if (tokens[hit.first]?.clause !== tokens[earlier.first]?.clause) return;
    if (hit.first - earlier.last > LIFT_REACH) return;
    lifted.add(hit);
    lifted.add(earlier);
  });
  return lifted;
}

/** A negator between the words of an ending: "has not gone away". */
function isWithin(negator: Hit, ending: Hit): boolean {
  return negator.first > ending.first && negator.last < ending.last && !ending.at.includes(negator.first);
}

/**
 * Mentions with what is denied marked absent.
 *
 * Shape   mentions in reading order; segments[i] is the segment of token i. Gives the same mentions, in the same order.
 */
export function markDenied(
  tokens: readonly Token[],
  segments: readonly number[],
  mentions: readonly Mention[],
  hits: Hits,
  denials: Denials,
): Mention[] {
  const bySegment = groupBySegment(segments, mentions, (mention) => mention.hit.first);
  const negators = groupBySegment(segments, denials.negators, (hit) => hit.first);
  const gone = groupBySegment(segments, denials.gone, (hit) => hit.first);
  const fine = groupBySegment(segments, hits.of("fine"), (hit) => hit.first);
  const cured = groupBySegment(segments, denials.cured, (hit) => hit.first);
  const marked = new Map<Mention, Partial<Mention>>();
  const deny = (mention: Mention, how: Partial<Mention> = {}) =>
    marked.set(mention, { ...marked.get(mention), state: "absent", ...how });

  const ends = new Map(segments.map((segment, i) => [segment, i]));
  for (const [segment, inSegment] of bySegment) {
    for (const mention of inSegment) {
      if (isNegated(mention, inSegment, negators.get(segment) ?? [])) deny(mention);
      if ((cured.get(segment) ?? []).some((hit) => isNear(hit, mention, VOID_REACH))) {
        if (tellsComplaint(mention)) deny(mention, { ended: true });
      }
    }
    if (endsDenied(segment, ends, negators.get(segment) ?? [], inSegment))
      inSegment.filter(isLimiting).forEach((limit) => deny(limit));
    denyList(tokens, segments, segment, ends, bySegment, marked, deny);
    limitDenials(inSegment, marked, deny);
  }
  for (const [segment, endings] of gone) {
    for (const ending of endings) {
      const passing = hits
        .of("whileItLasts")
        .some((hit) => hit.first === ending.last + 1 || isCutBy(hit, ending));
      denyGone({ ending, segment, passing }, bySegment, mentions, tokens, deny);
    }
  }
  for (const [segment, words] of fine) {
    for (const word of words) denyFine(word, bySegment.get(segment) ?? [], deny);
  }
  for (const former of hits.of("former")) denyFormer(former, tokens, mentions, hits, denials, deny);
  return mentions.map((mention) => ({ ...mention, ...marked.get(mention) }));
}

type Deny = (mention: Mention, how?: Partial<Mention>) => void;

function groupBySegment<T>(
  segments: readonly number[],
  items: readonly T[],
  first: (item: T) => number,
): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const segment = segments[first(item)] ?? 0;
    const group = groups.get(segment);
    if (group === undefined) groups.set(segment, [item]);
    else group.push(item);
  }
  return groups;
}

function isNear(before: Hit, mention: Mention, reach: number): boolean {
  return before.last < mention.hit.first && mention.hit.first - before.last <= reach;
}

/** A negator before or inside it; what one reaches over grows with each thing denied in a row. */
function isNegated(mention: Mention, inSegment: readonly Mention[], negators: readonly Hit[]): boolean {
  const { first, last, at } = mention.hit;
  const own = negators.filter((hit) => !hit.at.every((i) => at.includes(i)));
  const inside = own.filter((hit) => hit.first > first && hit.last < last);
  const before = own.filter((hit) => {
    if (hit.last >= first) return false;
    const passed = inSegment.filter((other) => other.hit.first > hit.last && other.hit.last < first);
    const over = passed.reduce((sum, other) => sum + other.hit.at.length, 0);
    return first - hit.last - 1 - over <= REACH;
  });
  return before.length + inside.length > 0;
}

/** "(I feel it in the seat,) but the steering wheel does not": a negator at the end denies what its clause names. */
function endsDenied(
  segment: number,
  ends: ReadonlyMap<number, number>,
  negators: readonly Hit[],
  inSegment: readonly Mention[],
): boolean {
  const end = ends.get(segment) ?? 0;
  const last = negators.at(-1);
  return (
    last !== undefined &&
    end - last.last < ELLIPSIS &&
    inSegment.every((mention) => mention.hit.last < last.first && !tellsComplaint(mention))
  );
}

/** "no shaking, vibration or pull": the denial runs on through short parts up to the one with "or". */
function denyList(
  tokens: readonly Token[],
  segments: readonly number[],
  segment: number,
  ends: ReadonlyMap<number, number>,
  bySegment: ReadonlyMap<number, readonly Mention[]>,
  marked: ReadonlyMap<Mention, Partial<Mention>>,
  deny: Deny,
): void {
  const starts = bySegment.get(segment) ?? [];
  if (!starts.some((mention) => marked.get(mention)?.state === "absent" && tellsComplaint(mention))) return;
  let i = (ends.get(segment) ?? segments.length) + 1;
  const listed: Mention[] = [];
  for (let next = segment + 1; segments[i] === next && next <= segment + LIST_PARTS; next += 1) {
    if (tokens[i]?.sentence !== tokens[i - 1]?.sentence) return;
    const part: Token[] = [];
    for (; segments[i] === next; i += 1) part.push(tokens[i] as Token);
    const mentions = bySegment.get(next) ?? [];
    const isLast = part.some((token) => token.bare === "or" || token.bare === "nor");
    if (mentions.length === 0 || part.length > LIST_PART + (isLast ? LIST_PART : 0)) return;
    listed.push(...mentions);
    if (isLast) {
      for (const mention of listed) deny(mention);
      return;
    }
  }
}

/** "no noise when braking" denies the braking, and leaves the noise open; so does "when braking there is no noise". */
function limitDenials(
  inSegment: readonly Mention[],
  marked: ReadonlyMap<Mention, Partial<Mention>>,
  deny: Deny,
): void {
  const denied = inSegment.filter(
    (mention) => tellsComplaint(mention) && marked.get(mention)?.state === "absent",
  );
  const limits = inSegment.filter(isLimiting);
  if (denied.length === 0 || limits.length === 0) return;
  for (const limit of limits) deny(limit);
  for (const mention of denied) deny(mention, { restricted: true });
}

/** Holds the ending's own last words: "stops when". */
function isCutBy(hit: Hit, ending: Hit): boolean {
  return hit.first > ending.first && hit.last <= ending.last;
}

interface Ending {
  readonly ending: Hit;
  readonly segment: number;
  /** It ends for a while or under a condition only: "gone once it moves". */
  readonly passing: boolean;
}

/** "the shake is gone", "it goes away when warm", "the noise when braking has gone". */
function denyGone(
  { ending, segment, passing }: Ending,
  bySegment: ReadonlyMap<number, readonly Mention[]>,
  mentions: readonly Mention[],
  tokens: readonly Token[],
  deny: Deny,
): void {
  const inSegment = bySegment.get(segment) ?? [];
  const taken = inSegment.find((mention) => shareWord(mention.hit, ending));
  const limits = inSegment.filter((mention) => isLimiting(mention) && mention !== taken);
  const after = limits.filter((mention) => mention.hit.first > ending.last);
  if (after.length > 0) {
    for (const limit of after) deny(limit);
    return;
  }
  if (taken !== undefined || passing) return;
  const told = inSegment.filter((mention) => tellsComplaint(mention) && mention.hit.last < ending.first);
  const before = limits.filter((mention) => mention.hit.last < ending.first);
  for (const limit of before) deny(limit);
  if (told.length > 0) {
    const limited = before.length > 0;
    for (const mention of told) {
      const aheadOfLimits = before.every((limit) => limit.hit.first > mention.hit.first);
      if (!limited) deny(mention, { ended: true });
      else deny(mention, { restricted: !aheadOfLimits });
    }
    return;
  }
  if (before.length > 0) return;
  const sentence = tokens[ending.first]?.sentence ?? 0;
  const upTo = firstFrom(mentions, ending.first);
  const near = mentions.slice(Math.max(0, upTo - GONE_BACK), upTo);
  const earlier = near.filter(
    (mention) => tellsComplaint(mention) && sentence - (tokens[mention.hit.first]?.sentence ?? 0) <= 1,
  );
  const last = earlier.at(-1);
  if (last === undefined) return;
  const complaint = complaintOf(last);
  for (const mention of earlier) if (complaintOf(mention) === complaint) deny(mention, { ended: true });
}

/** "fine at low speed", "in the wet it is quiet". */
function denyFine(word: Hit, inSegment: readonly Mention[], deny: Deny): void {
  const troubleAfter = inSegment.some(
    (mention) => tellsComplaint(mention) && mention.hit.first > word.last && mention.state === "present",
  );
  if (troubleAfter) return;
  const limits = inSegment.filter(
    (mention) => isLimiting(mention) && mention.feature?.kind !== "where" && !shareWord(mention.hit, word),
  );
  const after = limits.filter((mention) => mention.hit.first > word.last);
  for (const mention of after.length > 0 ? after : limits) deny(mention);
}

/** "used to pull", unless it goes on "and now it also ...". */
function denyFormer(
  former: Hit,
  tokens: readonly Token[],
  mentions: readonly Mention[],
  hits: Hits,
  denials: Denials,
  deny: Deny,
): void {
  const sentence = tokens[former.first]?.sentence;
  const later = (hit: Hit) => hit.first > former.last && tokens[hit.first]?.sentence === sentence;
  const over = [...denials.negators, ...denials.gone, ...hits.of("fine")].some(later);
  if (!over && hits.of("stillSo").some(later)) return;
  const from = firstFrom(mentions, former.last);
  for (const mention of mentions.slice(from, from + GONE_BACK)) {
    if (tellsComplaint(mention) && isNear(former, mention, FORMER_REACH)) {
      deny(mention, { ended: true, hedged: mention.hedged || !over });
    }
  }
}
