import type { CompiledFeature, Knowledge } from "../knowledge/schema/compiled.ts";
import { type Attachment, Attacher } from "./attachment.ts";
import { markDenied, standingDenials } from "./denial.ts";
import type { Hits } from "./hits.ts";
import type { Mention, State } from "./mentions.ts";
import { complaintOf, isLimiting, tellsComplaint } from "./mentions.ts";
import { placeOf } from "./observation-place.ts";
import type { Hit } from "./phrases.ts";
import type { Reading } from "./proposals.ts";
import { segmentsOf } from "./segments.ts";
import { sift } from "./sift.ts";
import { findSpeeds, type SpeedMention } from "./speeds.ts";
import type { Token } from "./tokens.ts";
import { turnAtUntil } from "./until.ts";

/** A text cut into words, with every phrase found in it. */
export interface Passage {
  readonly knowledge: Knowledge;
  readonly features: ReadonlyMap<string, CompiledFeature>;
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly hits: Hits;
  readonly speedUnit: "mph" | "km/h" | undefined;
}

const CONFIDENCE_BY_WORDS = [0.75, 0.85, 0.9];
const HEDGED = 0.7;
const MENDED = 0.85;
const UNIT_ASSUMED = 0.65;
const ONLY = 0.6;
/** Least overlap of a told speed with a band, km/h; and the share of a band that a denial must hold. */
const OVERLAP = 0.4;
const DENIED_SHARE = 0.8;
/** Sureness of a complaint that is told of only by where it is not. */
const BY_CONTRAST = 0.8;
const ONLY_REACH = 4;
const LEVEL_REACH = 4;
/** Mentions that start earlier, yet may reach over a later one. */
const NEIGHBOURS_BEFORE = 20;
/** A hedge with fewer words after it than this ends its segment. */
const HEDGE_AT_END = 2;

/** Every reading of the passage's words as a finding. */
export function readingsOf(passage: Passage): Reading[] {
  const { knowledge, tokens, hits, features } = passage;
  const speeds = findSpeeds(passage.text, tokens, hits, knowledge.words, passage.speedUnit);
  const kept = sift(tokens, hits, features);
  const denials = standingDenials(tokens, hits, kept);
  const complaints = kept.filter((hit) => isComplaint(hit, features));
  const clauses = ["newClause", "until", "unless"].flatMap((tag) => hits.of(tag));
  const segments = segmentsOf(tokens, clauses, denials.negators, complaints);
  const isHedged = hedgeReach(segments, hits);
  const mentions = [...kept.map((hit) => ({ hit, speed: undefined })), ...speeds.map(asHit)]
    .sort((a, b) => a.hit.first - b.hit.first || a.hit.last - b.hit.last)
    .map(({ hit, speed }): Mention => {
      const mended = hit.at.some((i) => tokens[i]?.mended);
      const words = CONFIDENCE_BY_WORDS[Math.min(hit.at.length, CONFIDENCE_BY_WORDS.length) - 1] ?? 0;
      return {
        kind: speed === undefined ? (hit.sense.tag as Mention["kind"]) : "speed",
        id: hit.sense.id,
        hit,
        feature: features.get(hit.sense.id),
        speed,
        confidence: words * (mended ? MENDED : 1) * (speed?.unitAssumed ? UNIT_ASSUMED : 1),
        hedged: isHedged(hit) || (speed?.unitAssumed ?? false),
        state: "present",
        ended: false,
        restricted: false,
      };
    });
  const marked = markDenied(tokens, segments, mentions, hits, denials);
  const turned = turnAtUntil(tokens, segments, marked, hits, denials);
  const denied = dropContained(expandSpeeds(turned, knowledge));
  const told = withoutPlaceOfWork(denied, tokens, segments);
  const opens = new Set(hits.of("newClause").map((hit) => hit.first));
  const attacher = new Attacher(tokens, segments, opens, told);
  const outcome = complaintStates(told);
  const byContrast = toldByContrast(told, attacher, outcome);
  for (const complaint of byContrast.keys()) outcome.set(complaint, "present");
  return told.flatMap((mention) => {
    const readings = readingsOfMention(passage, mention, told, attacher, outcome);
    const contrast = complaintOf(mention);
    if (contrast !== undefined && byContrast.get(contrast) === mention) {
      readings.push(readingOf(passage, mention, contrast, "present", BY_CONTRAST));
    }
    return [...readings, ...onlyReadings(passage, mention, attacher)];
  });
}

/** A hedge reaches over what follows it in its segment; one that ends the segment ("..., I think") over all of it. */
function hedgeReach(segments: readonly number[], hits: Hits): (hit: Hit) => boolean {
  const starts = new Map<number, number>();
  for (const hedge of hits.of("hedges")) {
    const segment = segments[hedge.first] ?? 0;
    const atEnd = segments[hedge.last + HEDGE_AT_END] !== segment;
    starts.set(segment, Math.min(starts.get(segment) ?? Infinity, atEnd ? -1 : hedge.first));
  }
  return (hit) => hit.last > (starts.get(segments[hit.first] ?? 0) ?? Infinity);
}

function isComplaint(hit: Hit, features: ReadonlyMap<string, CompiledFeature>): boolean {
  const feature = features.get(hit.sense.id);
  return tellsComplaint({ kind: hit.sense.tag, id: hit.sense.id, feature } as Mention);
}

function asHit(speed: SpeedMention): { hit: Hit; speed: SpeedMention } {
  const at = Array.from({ length: speed.last - speed.first + 1 }, (_, i) => speed.first + i);
  return { hit: { sense: { tag: "speed", id: "" }, at, first: speed.first, last: speed.last }, speed };
}

/** Each told speed as the bands it speaks of: all that it touches, or, when denied, all that lie within. */
function expandSpeeds(mentions: readonly Mention[], knowledge: Knowledge): Mention[] {
  return mentions.flatMap((mention) => {
    const { speed, state } = mention;
    if (speed === undefined) return [mention];
    return knowledge.features
      .filter((feature) => feature.speed !== undefined && touches(speed, feature.speed, state))
      .map((feature): Mention => ({ ...mention, kind: "feature", id: feature.id, feature }));
  });
}

function touches(told: SpeedMention, band: { from: number; to: number }, state: State): boolean {
  const shared = Math.min(told.to, band.to) - Math.max(told.from, band.from);
  return state === "absent" ? shared >= DENIED_SHARE * (band.to - band.from) : shared >= OVERLAP;
}

/** Leaves out features whose words lie within a longer phrase of the same group and state: "bump" in "speed bump". */
function dropContained(mentions: readonly Mention[]): Mention[] {
  return mentions.filter((mention, i) => {
    const { feature, hit } = mention;
    if (feature === undefined) return true;
    for (const other of neighbours(mentions, i)) {
      if (other.feature?.group !== feature.group || other.id === mention.id) continue;
      if (other.state !== mention.state) continue;
      if (narrows(mention, other.hit)) return false;
      const longer = other.hit.at.length > hit.at.length;
      if (longer && hit.at.every((at) => other.hit.at.includes(at))) return false;
    }
    return true;
  });
}

/** "(Not when I) brake (hard)": a denial of the narrower moment, told further on, is none of the wider. */
function narrows(mention: Mention, other: Hit): boolean {
  const { hit, state } = mention;
  return state === "absent" && other.last > hit.last && other.at.includes(hit.last);
}

/** Mentions, sorted by first token, that may share a token with the i-th. */
function neighbours(mentions: readonly Mention[], i: number): Mention[] {
  const last = mentions[i]?.hit.last ?? 0;
  let end = i + 1;
  while ((mentions[end]?.hit.first ?? Infinity) <= last) end += 1;
  return [...mentions.slice(Math.max(0, i - NEIGHBOURS_BEFORE), i), ...mentions.slice(i + 1, end)];
}

/** "New bushes were fitted at the front": that front is where the work was, not where the trouble is. */
function withoutPlaceOfWork(
  mentions: readonly Mention[],
  tokens: readonly Token[],
  segments: readonly number[],
): Mention[] {
  const parts = [(i: number) => segments[i], (i: number) => tokens[i]?.sentence];
  return parts.reduce<readonly Mention[]>((kept, partOf) => {
    const worked = new Set<number | undefined>();
    const troubled = new Set<number | undefined>();
    for (const mention of kept) {
      const part = partOf(mention.hit.first);
      if (mention.kind === "context") worked.add(part);
      if (tellsComplaint(mention) || mention.kind === "observation") troubled.add(part);
    }
    return kept.filter((mention) => {
      const part = partOf(mention.hit.first);
      return mention.feature?.kind !== "where" || !worked.has(part) || troubled.has(part);
    });
  }, mentions) as Mention[];
}

/** Whether each complaint is there after all that the text says of it; restricted denials say nothing. */
function complaintStates(mentions: readonly Mention[]): Map<string, State> {
  const states = new Map<string, State>();
  for (const mention of mentions) {
    const complaint = complaintOf(mention);
    if (complaint === undefined || mention.restricted) continue;
    if (mention.state === "present") states.set(complaint, "present");
    else if (mention.ended || states.get(complaint) === undefined) states.set(complaint, "absent");
  }
  return states;
}

/** Complaints told of only by where they are not, while something is said of where they are: "no shake below 40, but from 50". */
function toldByContrast(
  mentions: readonly Mention[],
  attacher: Attacher,
  outcome: ReadonlyMap<string, State>,
): ReadonlyMap<string, Mention> {
  const limited = new Map<string, Mention>();
  for (const mention of mentions) {
    const complaint = complaintOf(mention);
    if (mention.restricted && complaint !== undefined && !outcome.has(complaint))
      limited.set(complaint, mention);
  }
  if (limited.size === 0) return limited;
  const positive = new Set(
    mentions.flatMap((mention) =>
      mention.feature !== undefined && mention.state === "present" && isLimiting(mention)
        ? attacher.attach(mention.feature, mention).complaints
        : [],
    ),
  );
  return new Map([...limited].filter(([complaint]) => positive.has(complaint)));
}

function readingsOfMention(
  passage: Passage,
  mention: Mention,
  mentions: readonly Mention[],
  attacher: Attacher,
  outcome: ReadonlyMap<string, State>,
): Reading[] {
  const { knowledge, tokens } = passage;
  const reading = (finding: string, state: State, sureness = 1, level?: string): Reading =>
    readingOf(passage, mention, finding, state, sureness, level);
  const readings: Reading[] = [];
  const complaint = complaintOf(mention);
  if (complaint !== undefined && !mention.restricted && outcome.get(complaint) === mention.state) {
    readings.push(reading(complaint, mention.state));
  }
  if (mention.kind === "context") readings.push(reading(mention.id, mention.state));
  if (mention.kind === "observation") {
    const observation = knowledge.observations.find((record) => record.id === mention.id);
    if (observation === undefined) return readings;
    const sides = mentions.filter((other) => Object.values(knowledge.words.sides).includes(other.id));
    const place = placeOf(knowledge, observation, mention, sides, tokens);
    const id = place === undefined ? mention.id : `${mention.id}@${place}`;
    readings.push(reading(id, mention.state, 1, levelOf(passage, mention, observation.levels)));
  }
  const limited = mention.restricted && complaint !== undefined;
  if (mention.feature !== undefined && !limited) {
    for (const [finding, sureness] of attached(mention.feature, mention, attacher, outcome)) {
      readings.push(reading(finding, mention.state, sureness));
    }
  }
  return readings;
}

function readingOf(
  passage: Passage,
  mention: Mention,
  finding: string,
  state: State,
  sureness: number,
  level?: string,
): Reading {
  return {
    finding,
    state,
    level,
    from: passage.tokens[mention.hit.first]?.from ?? 0,
    to: passage.tokens[mention.hit.last]?.to ?? 0,
    confidence: mention.confidence * (mention.hedged ? HEDGED : 1) * sureness,
    hedged: mention.hedged,
  };
}

/** Finding ids of a feature at its complaints; features of a complaint that has gone are moot. */
function attached(
  feature: CompiledFeature,
  mention: Mention,
  attacher: Attacher,
  outcome: ReadonlyMap<string, State>,
): [string, number][] {
  const { complaints, sureness }: Attachment = attacher.attach(feature, mention);
  if (complaints.length === 0) {
    // Where a complaint is told of that cannot have it, the moment is that one's all the same, and says nothing.
    const speaksAlone = (feature.kind === "moment" || feature.kind === "speed") && mention.hit.at.length > 1;
    return speaksAlone && outcome.size === 0 && mention.state === "present" ? [[feature.id, sureness]] : [];
  }
  return complaints
    .filter((complaint) => mention.state === "absent" || outcome.get(complaint) !== "absent")
    .filter((complaint) => feature.complaints.includes(complaint))
    .map((complaint) => [`${complaint}:${feature.id}`, sureness]);
}

/** "only when braking" rules out that it is there all the time. */
function onlyReadings(passage: Passage, mention: Mention, attacher: Attacher): Reading[] {
  const { knowledge, tokens, hits, features } = passage;
  const kind = mention.feature?.kind;
  if ((kind !== "moment" && kind !== "speed") || mention.state === "absent") return [];
  const only = hits
    .of("only")
    .find(
      (hit) =>
        tokens[hit.first]?.sentence === tokens[mention.hit.first]?.sentence &&
        hit.first <= mention.hit.first &&
        mention.hit.first - hit.last <= ONLY_REACH,
    );
  if (only === undefined || mention.feature === undefined) return [];
  const { complaints } = attacher.attach(mention.feature, mention);
  return knowledge.words.only.rulesOut.flatMap((id) =>
    complaints
      .filter((complaint) => features.get(id)?.complaints.includes(complaint))
      .map((complaint) => ({
        finding: `${complaint}:${id}`,
        state: "absent" as const,
        level: undefined,
        from: tokens[only.first]?.from ?? 0,
        to: tokens[mention.hit.last]?.to ?? 0,
        confidence: ONLY * (mention.hedged ? HEDGED : 1),
        hedged: mention.hedged,
      })),
  );
}

/** "slight play" -> the first grade, "badly worn" -> the last; undefined when nothing is said. */
function levelOf(passage: Passage, mention: Mention, levels: readonly string[]): string | undefined {
  if (levels.length < 2) return undefined;
  const { hits, tokens } = passage;
  const near = (tag: string) =>
    hits
      .of(tag)
      .filter((hit) => tokens[hit.first]?.clause === tokens[mention.hit.first]?.clause)
      .some(
        (hit) => hit.last >= mention.hit.first - LEVEL_REACH && hit.first <= mention.hit.last + LEVEL_REACH,
      );
  if (near("levels.least")) return levels[0];
  return near("levels.most") ? levels.at(-1) : undefined;
}
