import type { CompiledFeature, Knowledge } from "../knowledge/schema/compiled.ts";
import type { Hit } from "./phrases.ts";
import type { SpeedMention } from "./speeds.ts";

export type State = "present" | "absent";

/** One place in the text that tells of a finding. */
export interface Mention {
  readonly kind: "complaint" | "feature" | "observation" | "context" | "speed";
  /** Id of the record; empty for a speed. */
  readonly id: string;
  readonly hit: Hit;
  /** For a feature. */
  readonly feature: CompiledFeature | undefined;
  /** For a speed, until it is known which bands it speaks of. */
  readonly speed: SpeedMention | undefined;
  /** Confidence in the words alone, before hedges and attachment. */
  readonly confidence: number;
  readonly hedged: boolean;
  readonly state: State;
  /** Absent because it was there and went away: it holds against earlier mentions. */
  readonly ended: boolean;
  /** A complaint denied only for the moments named beside it; the complaint itself stays open. */
  readonly restricted: boolean;
}

/** Kinds of feature that limit a denial to themselves: "no noise when braking". */
const LIMITING: ReadonlySet<string> = new Set(["moment", "speed", "where", "felt", "direction", "course"]);

/** True for a feature that tells when, where or how it shows. */
export function isLimiting(mention: Mention): boolean {
  if (mention.kind === "speed") return true;
  return (
    mention.feature !== undefined && !impliesComplaint(mention.feature) && LIMITING.has(mention.feature.kind)
  );
}

/** True when the mention names a complaint, or a feature that only one complaint can have: "clunk" is a noise. */
export function tellsComplaint(mention: Mention): boolean {
  return mention.kind === "complaint" || (mention.feature !== undefined && impliesComplaint(mention.feature));
}

/** The complaint that the mention tells of by itself. */
export function complaintOf(mention: Mention): string | undefined {
  if (mention.kind === "complaint") return mention.id;
  return mention.feature !== undefined && impliesComplaint(mention.feature)
    ? mention.feature.complaints[0]
    : undefined;
}

const IMPLYING: ReadonlySet<string> = new Set(["sound", "pattern", "direction"]);

function impliesComplaint(feature: CompiledFeature): boolean {
  return feature.complaints.length === 1 && IMPLYING.has(feature.kind);
}

/** Features of the knowledge by id. */
export function featuresById(knowledge: Knowledge): ReadonlyMap<string, CompiledFeature> {
  return new Map(knowledge.features.map((feature) => [feature.id, feature]));
}

/** Index of the first mention that starts at the token or later; mentions are in reading order. */
export function firstFrom(mentions: readonly Mention[], token: number): number {
  let low = 0;
  let high = mentions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((mentions[middle]?.hit.first ?? 0) < token) low = middle + 1;
    else high = middle;
  }
  return low;
}
