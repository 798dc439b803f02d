import type { CompiledFeature } from "../knowledge/schema/compiled.ts";
import type { Mention } from "./mentions.ts";
import { complaintOf, isLimiting, tellsComplaint } from "./mentions.ts";
import type { Token } from "./tokens.ts";

/** Two complaints with at most so many words between are told of as one: "a clunk and a shimmy over bumps". */
const TOGETHER = 3;

/** The complaints that a feature belongs to, and how sure that is. */
export interface Attachment {
  readonly complaints: readonly string[];
  readonly sureness: number;
}

const SURE = { clause: 1, sentence: 0.95, earlier: 0.9, all: 0.7, none: 0.5 };

/** Attaches features to the complaints of a text. */
export class Attacher {
  readonly #tokens: readonly Token[];
  readonly #segments: readonly number[];
  /** First token of each clause-opening word ("and", "then"). */
  readonly #opens: ReadonlySet<number>;
  readonly #told: readonly Mention[];
  readonly #limits: readonly Mention[];

  constructor(
    tokens: readonly Token[],
    segments: readonly number[],
    opens: ReadonlySet<number>,
    mentions: readonly Mention[],
  ) {
    this.#tokens = tokens;
    this.#segments = segments;
    this.#opens = opens;
    this.#told = mentions.filter(tellsComplaint);
    this.#limits = mentions.filter(isLimiting);
  }

  /** Complaint of the same clause, of the same sentence, the nearest before, else all; none when the text tells of none. */
  attach(feature: CompiledFeature, mention: Mention): Attachment {
    const own = complaintOf(mention);
    if (own !== undefined) return { complaints: [own], sureness: 1 };
    const accepts = (told: Mention) => feature.complaints.includes(complaintOf(told) ?? "");
    const accepted = this.#told.filter(accepts);
    const standing = accepted.filter((told) => told.state === "present" || told.restricted);
    const told = mention.state === "present" && standing.length > 0 ? standing : accepted;
    const i = mention.hit.first;
    const segment = this.#segments[i];
    const inClause = this.#nearest(
      told.filter((other) => this.#segments[other.hit.first] === segment),
      i,
    );
    if (inClause !== undefined) return this.#group(inClause, told, SURE.clause);
    const sentence = this.#tokens[i]?.sentence;
    const inSentence = told.filter((other) => this.#tokens[other.hit.first]?.sentence === sentence);
    const near = this.#beside(inSentence, i);
    if (near !== undefined) return this.#group(near, told, SURE.sentence);
    const earlier = told.filter((other) => other.hit.first < i).at(-1);
    if (earlier !== undefined) return this.#group(earlier, told, SURE.earlier);
    const all = new Set(told.flatMap((other) => complaintOf(other) ?? []));
    return all.size > 0
      ? { complaints: [...all], sureness: SURE.all }
      : { complaints: [], sureness: SURE.none };
  }

  /** Nearest before, else nearest after. */
  #nearest(told: readonly Mention[], i: number): Mention | undefined {
    return told.filter((other) => other.hit.first <= i).at(-1) ?? told[0];
  }

  /** As nearest, but a clause that opens anew ("and when braking, it shakes") looks ahead first. */
  #beside(told: readonly Mention[], i: number): Mention | undefined {
    const segment = this.#segments[i] ?? 0;
    const start = this.#segments.indexOf(segment, Math.max(0, i - 200));
    const next = told.find((other) => this.#segments[other.hit.first] === segment + 1);
    if (next !== undefined && this.#opens.has(start)) return next;
    return this.#nearest(told, i);
  }

  /** The complaint and those told of in one breath with it. */
  #group(one: Mention, told: readonly Mention[], sureness: number): Attachment {
    const at = told.indexOf(one);
    const complaints = new Set([complaintOf(one) ?? ""]);
    for (const step of [-1, 1]) {
      for (let i = at; told[i + step] !== undefined; i += step) {
        const [a, b] = step < 0 ? [told[i + step], told[i]] : [told[i], told[i + step]];
        if (a === undefined || b === undefined || !this.#inOneBreath(a, b)) break;
        complaints.add(complaintOf(told[i + step] as Mention) ?? "");
      }
    }
    return { complaints: [...complaints], sureness };
  }

  #inOneBreath(a: Mention, b: Mention): boolean {
    if (a.state !== b.state || b.hit.first - a.hit.last - 1 > TOGETHER) return false;
    if (this.#tokens[a.hit.first]?.sentence !== this.#tokens[b.hit.first]?.sentence) return false;
    return !this.#limits.some((limit) => limit.hit.first > a.hit.first && limit.hit.first < b.hit.first);
  }
}
