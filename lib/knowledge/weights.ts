import type { CompiledFault, Knowledge } from "./schema/compiled.ts";
import { logOdds } from "../maths/log-odds.ts";

/** A weight as it stands in the knowledge, and its share of a log-odds. */
export interface NamedWeight {
  readonly value: number;
  readonly logOdds: number;
}

/**
 * Every weight that the reasoning reads, by a name that stays the same from version to version.
 *
 * Probabilities count by their log-odds; factors on odds (contexts) by their logarithm.
 */
export function weightsOf(knowledge: Knowledge): Map<string, NamedWeight> {
  const weights = new Map<string, NamedWeight>();
  const probability = (name: string, p: number) => weights.set(name, { value: p, logOdds: logOdds(p) });
  for (const fault of knowledge.faults) faultWeights(fault, weights, probability);
  for (const { id, leak } of knowledge.complaints) probability(`complaints/${id} leak`, leak);
  for (const { id, background, unlisted } of knowledge.features) {
    probability(`features/${id} background`, background);
    probability(`features/${id} unlisted`, unlisted);
  }
  for (const { id, leak, levels } of knowledge.observations) {
    leak.forEach((p, i) => {
      probability(`observations/${id} leak.${levels[i] ?? i}`, p);
    });
  }
  for (const { id, share } of knowledge.contexts) probability(`contexts/${id} share`, share);
  return weights;
}

function faultWeights(
  fault: CompiledFault,
  weights: Map<string, NamedWeight>,
  probability: (name: string, p: number) => void,
): void {
  const at = `faults/${fault.id}`;
  if ("share" in fault.life) probability(`${at} share`, fault.life.share);
  for (const [context, factor] of Object.entries(fault.contexts)) {
    weights.set(`${at} contexts.${context}`, { value: factor, logOdds: Math.log(factor) });
  }
  const seen = new Map<string, number>();
  for (const showing of fault.shows) {
    const count = (seen.get(showing.complaint) ?? 0) + 1;
    seen.set(showing.complaint, count);
    const name = count === 1 ? showing.complaint : `${showing.complaint}#${count}`;
    probability(`${at} shows.${name}`, showing.strength.p);
    for (const [feature, p] of Object.entries(showing.features)) {
      probability(`${at} shows.${name}.${feature}`, p);
    }
  }
  for (const link of fault.links) {
    link.levels.forEach((level, i) => {
      probability(`${at} links.${link.observation}.${i}`, level.p);
    });
  }
}
