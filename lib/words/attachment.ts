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

interface Told {
  readonly mention: Mention;
  readonly complaint: string;
  /** It is there, or was denied for some moments only. */
  readonly standing: boolean;
  readonly segment: number;
  readonly sentence: number;
}

type Usable = (told: Told) => boolean;

/** Attaches features to the complaints of a text. */
export class Attacher {
  readonly #tokens: readonly Token[];
  readonly #segments: readonly number[];
  /** First token of each clause-opening word ("and", "then"). */
  readonly #opens: ReadonlySet<number>;
  readonly #told: readonly Told[];
  readonly #standing: ReadonlySet<string>;
  readonly #limits: ReadonlySet<number>;

  constructor(
    tokens: readonly Token[],
    segments: readonly number[],
    opens: ReadonlySet<number>,
    mentions: readonly Mention[],
  ) {
    this.#tokens = tokens;
    this.#segments = segments;
    this.#opens = opens;
    this.#told = mentions.filter(tellsComplaint).map((mention) => ({
      mention,
      complaint: complaintOf(mention) ?? "",
      standing: mention.state === "present" || mention.restricted,
      segment: segments[mention.hit.first] ?? 0,
      sentence: tokens[mention.hit.first]?.sentence ?? 0,
    }));
    this.#standing = new Set(this.#told.filter((told) => told.standing).map((told) => told.complaint));
    this.#limits = new Set(mentions.filter(isLimiting).map((limit) => limit.hit.first));
  }

  /** Complaint of the same clause, of the same sentence, the nearest before, else all; none when the text tells of none. */
  attach(feature: CompiledFeature, mention: Mention): Attachment {
    const own = complaintOf(mention);
    if (own !== undefined) return { complaints: [own], sureness: 1 };
    const needsStanding =
      mention.state === "present" && feature.complaints.some((complaint) => this.#standing.has(complaint));
    const usable: Usable = (told) =>
      feature.complaints.includes(told.complaint) && (told.standing || !needsStanding);
    const i = mention.hit.first;
    const segment = this.#segments[i] ?? 0;
    const inClause = this.#nearest(i, usable, (told) => told.segment === segment);
    if (inClause !== undefined) return this.#group(inClause, usable, SURE.clause);
    const sentence = this.#tokens[i]?.sentence;
    const near = this.#beside(i, segment, usable, (told) => told.sentence === sentence);
    if (near !== undefined) return this.#group(near, usable, SURE.sentence);
    const earlier = this.#walk(this.#after(i) - 1, -1, usable, () => true);
    if (earlier !== undefined) return this.#group(earlier, usable, SURE.earlier);
    const all = new Set(this.#told.filter(usable).map((told) => told.complaint));
    return { complaints: [...all], sureness: all.size > 0 ? SURE.all : SURE.none };
  }

  /** Index of the nearest before within the stretch, else of the nearest after. */
  #nearest(i: number, usable: Usable, within: Usable): number | undefined {
    const after = this.#after(i);
    return this.#walk(after - 1, -1, usable, within) ?? this.#walk(after, 1, usable, within);
  }

  /** As nearest, but a clause that opens anew ("and when braking, it shakes") looks at the next one first. */
  #beside(i: number, segment: number, usable: Usable, within: Usable): number | undefined {
    let start = i;
    while (start > 0 && this.#segments[start - 1] === segment) start -= 1;
    if (this.#opens.has(start)) {
      const next = this.#walk(this.#after(i), 1, usable, (told) => told.segment <= segment + 1);
      if (next !== undefined) return next;
    }
    return this.#nearest(i, usable, within);
  }

  /** Index of the first told complaint after the token. */
  #after(token: number): number {
    let low = 0;
    let high = this.#told.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#told[middle]?.mention.hit.first ?? 0) <= token) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  #walk(from: number, step: number, usable: Usable, within: Usable): number | undefined {
    for (let i = from; ; i += step) {
      const told = this.#told[i];
      if (told === undefined || !within(told)) return undefined;
      if (usable(told)) return i;
    }
  }

  /** The complaint and those told of in one breath with it. */
  #group(one: number, usable: Usable, sureness: number): Attachment {
    const complaints = new Set([this.#told[one]?.complaint ?? ""]);
    for (const step of [-1, 1]) {
      let here = one;
      for (;;) {
        const next = this.#walk(here + step, step, usable, () => true);
        if (next === undefined || !this.#inOneBreath(Math.min(here, next), Math.max(here, next))) break;
        complaints.add(this.#told[next]?.complaint ?? "");
        here = next;
      }
    }
    return { complaints: [...complaints], sureness };
  }

  #inOneBreath(first: number, second: number): boolean {
    const a = this.#told[first];
    const b = this.#told[second];
    if (a === undefined || b === undefined || a.sentence !== b.sentence) return false;
    const { hit } = a.mention;
    if (a.mention.state !== b.mention.state || b.mention.hit.first - hit.last - 1 > TOGETHER) return false;
    for (let i = hit.first + 1; i < b.mention.hit.first; i += 1) if (this.#limits.has(i)) return false;
    return true;
  }
}
