import type { CompiledComplaint, CompiledFeature, CompiledShowing } from "../knowledge/schema/compiled.ts";
import type { NegativeFactor, PositiveBit } from "./core/index.ts";
import { featureChance, temperedWeight } from "./feature-chance.ts";
import type { ComplaintLink, Grounded } from "./ground.ts";
import { toldTrust } from "./told-trust.ts";

/** An answered feature of a complaint. */
export interface FeatureAnswer {
  readonly feature: CompiledFeature;
  readonly present: boolean;
  /** A told feature is as told only so often; else it says nothing. */
  readonly by: "report" | "check";
}

/**
 * A present complaint with its answered features as one noisy-OR bit.
 *
 * Each link is the fault's strength times the chance of every answered feature given that fault; the leak likewise
 * with the background rates. All are scaled so that the best-fitting one keeps its full strength, since features are
 * no further chances to fire. Features that go together share a tempered weight. `scale` is what they were scaled by:
 * the bit's probability times the scale compares answers with and without a feature.
 */
export function complaintBit(
  grounded: Grounded,
  complaint: CompiledComplaint,
  features: readonly FeatureAnswer[],
): { readonly bit: PositiveBit; readonly scale: number } {
  const links = grounded.links.get(complaint.id) ?? [];
  const weights = featureWeights(grounded, features);
  const background = features.reduce(
    (fit, { feature, present }, k) => fit * chanceOf(feature.background, present) ** (weights[k] ?? 1),
    1,
  );
  const fits = showingFits(grounded, complaint.id, features, weights);
  const best = fits.reduce((most, fit) => Math.max(most, fit), background);
  const parents = new Int32Array(links.length);
  const w = new Float64Array(links.length);
  let at = 0;
  for (let k = 0; k < links.length; k++) {
    const { suspect, showings } = links[k] as ComplaintLink;
    let quiet = 1;
    for (const { strength } of showings) {
      quiet *= 1 - (strength.p * (fits[at] as number)) / best;
      at += 1;
    }
    parents[k] = suspect;
    w[k] = 1 - quiet;
  }
  return { bit: { leak: (complaint.leak * background) / best, parents, w }, scale: best };
}

/** Chances of answered features under every showing of a complaint on this car, by what was answered: answers add up one by one. */
const FACTORS = new WeakMap<Grounded, Map<string, Float64Array>>();
/** Kept at most; a case asks for some dozens. */
const MOST_FACTORS = 512;

/** How well each showing of the complaint fits the answered features, in the order of the links and their showings. */
function showingFits(
  grounded: Grounded,
  complaint: string,
  features: readonly FeatureAnswer[],
  weights: readonly number[],
): Float64Array {
  const links = grounded.links.get(complaint) ?? [];
  const fits = new Float64Array(links.reduce((sum, link) => sum + link.showings.length, 0)).fill(1);
  features.forEach((answer, k) => {
    const factors = featureFactors(grounded, complaint, links, answer, weights[k] ?? 1, fits.length);
    for (let at = 0; at < fits.length; at++) fits[at] = (fits[at] as number) * (factors[at] as number);
  });
  return fits;
}

function featureFactors(
  grounded: Grounded,
  complaint: string,
  links: readonly ComplaintLink[],
  answer: FeatureAnswer,
  weight: number,
  count: number,
): Float64Array {
  const kept = FACTORS.get(grounded) ?? new Map<string, Float64Array>();
  FACTORS.set(grounded, kept);
  const key = `${complaint}:${answer.feature.id} ${answer.present} ${answer.by} ${weight}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const factors = new Float64Array(count);
  let at = 0;
  for (const { suspect, showings } of links) {
    for (const showing of showings) {
      factors[at] = showingFit(grounded, suspect, showing, [answer], [weight]);
      at += 1;
    }
  }
  if (kept.size >= MOST_FACTORS) kept.clear();
  kept.set(key, factors);
  return factors;
}

/** An absent complaint: every fault that would show it is less likely; told ones weigh by their reliability. */
export function complaintAbsent(
  grounded: Grounded,
  complaint: CompiledComplaint,
  reliability: number,
): NegativeFactor {
  const links = grounded.links.get(complaint.id) ?? [];
  return {
    leakQ: 1 - complaint.leak * reliability,
    parents: Int32Array.from(links, (l) => l.suspect),
    q: Float64Array.from(links, (l) => 1 - reliability * showingStrength(l.showings)),
  };
}

/** Chance that a fault shows the complaint in any of its ways. */
export function showingStrength(showings: readonly CompiledShowing[]): number {
  return 1 - showings.reduce((quiet, s) => quiet * (1 - s.strength.p), 1);
}

/** How well a showing fits the answered features: product of their tempered chances. */
export function showingFit(
  grounded: Grounded,
  suspect: number,
  showing: CompiledShowing,
  features: readonly FeatureAnswer[],
  weights: readonly number[],
): number {
  const place = grounded.places.byId.get(grounded.suspects[suspect]?.place ?? "");
  if (place === undefined) return 1;
  return features.reduce((fit, { feature, present, by }, k) => {
    const chance = trusted(grounded, feature, featureChance(feature, showing, place), by);
    return fit * chanceOf(chance, present) ** (weights[k] ?? 1);
  }, 1);
}

/** Chance of a feature as it is told: mixed with its background by how often a told feature is as told. */
export function trusted(
  grounded: Grounded,
  feature: CompiledFeature,
  chance: number,
  by: FeatureAnswer["by"],
): number {
  const trust = by === "report" ? toldTrust(grounded.knowledge, feature) : 1;
  return trust * chance + (1 - trust) * feature.background;
}

/** Weight of each answered feature by how many of its group are answered. */
export function featureWeights(grounded: Grounded, features: readonly FeatureAnswer[]): number[] {
  const counts = new Map<string, number>();
  for (const { feature } of features) counts.set(feature.group, (counts.get(feature.group) ?? 0) + 1);
  const temper = new Map(grounded.knowledge.groups.groups.map((g) => [g.id, g.temper]));
  return features.map(({ feature }) =>
    temperedWeight(counts.get(feature.group) ?? 1, temper.get(feature.group) ?? 0),
  );
}

function chanceOf(p: number, present: boolean): number {
  return present ? p : 1 - p;
}
