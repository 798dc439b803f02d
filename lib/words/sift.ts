import type { CompiledFeature } from "../knowledge/schema/compiled.ts";
import type { Hits } from "./hits.ts";
import { coveredBy, hitsByToken, shareWord } from "./hits.ts";
import type { Hit } from "./phrases.ts";
import type { Token } from "./tokens.ts";

/** How far back a word reaches that makes an event a habit or a wish, in words. */
const REACH = 5;
const WANTED_REACH = 9;

/** Kinds of feature that stand beside an observation made of the same words: "clicks on full lock". */
const OWN_RIGHT: ReadonlySet<string> = new Set(["sound", "pattern", "moment"]);

/** Kinds of feature that a longer phrase around a complaint's word turns into something else: "pulling away". */
const TAKES_OVER: ReadonlySet<string> = new Set(["moment", "course"]);

/**
 * The hits that mean what they say: turns of phrase without meaning, wished-for work and words that belong to a longer
 * phrase of another meaning are left out.
 */
export function sift(
  tokens: readonly Token[],
  hits: Hits,
  features: ReadonlyMap<string, CompiledFeature>,
): Hit[] {
  const findings = ["complaint", "feature", "observation", "context"].flatMap((tag) => hits.of(tag));
  const turns = new Set([...hits.of("until"), ...hits.of("unless")].flatMap(({ at }) => at));
  // "Quiet until I brake" is no "quiet ... brake".
  const isCut = ({ first, last, at }: Hit) => {
    for (let i = first + 1; i < last; i += 1) if (turns.has(i) && !at.includes(i)) return true;
    return false;
  };
  const overNothing = hitsByToken(hits.of("noMeaning"));
  const meant = findings.filter(
    (hit) =>
      !isCut(hit) &&
      !overNothing(hit).some((nothing) => emptiedBy(hit, nothing, features)) &&
      (hit.sense.tag !== "context" || isEvent(tokens, hits, hit)),
  );
  const around = hitsByToken(meant);
  return meant.filter((hit) => !around(hit).some((other) => yields(hit, other, features)));
}

/** True when a turn of phrase takes the meaning from the hit; a side loses it by any shared word: "the right time". */
function emptiedBy(hit: Hit, nothing: Hit, features: ReadonlyMap<string, CompiledFeature>): boolean {
  if (hit.at.length > nothing.at.length) return false;
  if (features.get(hit.sense.id)?.kind === "where") return true;
  return hit.at.length < nothing.at.length && coveredBy(hit, nothing);
}

/** True when the context's words tell of something that happened, not of a habit, a wish or long ago. */
function isEvent(tokens: readonly Token[], hits: Hits, hit: Hit): boolean {
  const sentence = tokens[hit.first]?.sentence;
  const near = (other: Hit) => tokens[other.first]?.sentence === sentence;
  const before = (tag: string, reach: number) =>
    hits.of(tag).some((o) => near(o) && o.last < hit.first && hit.first - o.last <= reach);
  if (before("wanted", WANTED_REACH)) return false;
  const clause = tokens[hit.first]?.clause;
  if (hits.of("longAgo").some((o) => tokens[o.first]?.clause === clause)) return false;
  const habit = hits.of("habit").some((o) => near(o) && hit.first - o.first <= REACH && o.first <= hit.first);
  return !habit || before("lately", REACH * 2);
}

function yields(hit: Hit, other: Hit, features: ReadonlyMap<string, CompiledFeature>): boolean {
  if (hit.sense.id === other.sense.id || !shareWord(hit, other)) return false;
  const feature = features.get(hit.sense.id);
  const over = features.get(other.sense.id);
  const longer = coveredBy(hit, other) && other.at.length > hit.at.length;
  switch (hit.sense.tag) {
    case "feature":
      if (other.sense.tag === "context") return true;
      if (feature?.kind === "where") {
        return over?.kind === "direction" || (other.sense.tag === "complaint" && longer);
      }
      if (feature?.kind === "felt") return other.sense.tag === "complaint" && longer;
      return other.sense.tag === "observation" && longer && !OWN_RIGHT.has(feature?.kind ?? "");
    case "complaint":
      if (!longer) return false;
      if (other.sense.tag === "observation") return false;
      return other.sense.tag !== "feature" || TAKES_OVER.has(over?.kind ?? "");
    default:
      return false;
  }
}
