import type { CompiledComplaint, CompiledFeature, CompiledShowing } from "../knowledge/schema/compiled.ts";
import type { NegativeFactor, PositiveBit } from "./core/index.ts";
import { featureChance, temperedWeight } from "./feature-chance.ts";
import type { Grounded } from "./ground.ts";

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
 * no further chances to fire. Features that go together share a tempered weight.
 */
export function complaintBit(
  grounded: Grounded,
  complaint: CompiledComplaint,
  features: readonly FeatureAnswer[],
): PositiveBit {
  const links = grounded.links.get(complaint.id) ?? [];
  const weights = featureWeights(grounded, features);
  const background = features.reduce(
    (fit, { feature, present }, k) => fit * chanceOf(feature.background, present) ** (weights[k] ?? 1),
    1,
  );
  const fits = links.map((link) => ({
    suspect: link.suspect,
    showings: link.showings.map((showing) => ({
      strength: showing.strength.p,
      fit: showingFit(grounded, link.suspect, showing, features, weights),
    })),
  }));
  const best = Math.max(background, ...fits.flatMap((f) => f.showings.map((s) => s.fit)));
  return {
    leak: (complaint.leak * background) / best,
    parents: Int32Array.from(fits, (f) => f.suspect),
    w: Float64Array.from(
      fits,
      (f) => 1 - f.showings.reduce((quiet, s) => quiet * (1 - (s.strength * s.fit) / best), 1),
    ),
  };
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
  const trust = by === "report" ? grounded.knowledge.reports.features : 1;
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
