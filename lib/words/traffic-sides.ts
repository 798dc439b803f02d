import type { Words } from "../knowledge/schema/words.ts";
import { type Hit, findPhrases, indexPhrases, type PhraseIndex } from "./phrases.ts";
import type { Spelling } from "./spelling.ts";
import type { Token } from "./tokens.ts";

/** The side of the road that traffic keeps to. The driver sits on the other one, away from the kerb. */
export type Traffic = "left" | "right";

/** Words such as "nearside" and "driver's side", and where they stand in the text; `to` exclusive. */
export interface SideWords {
  readonly words: string;
  readonly from: number;
  readonly to: number;
}

/** Index of the words that are left or right by the side of traffic. */
export function indexSides({ trafficSides }: Words, spelling: Spelling): PhraseIndex {
  const { kerb, road } = trafficSides;
  return indexPhrases(
    Object.entries({ kerb, road }).flatMap(([id, list]) =>
      list.map((text) => ({ sense: { tag: "side", id }, text, gap: 0 })),
    ),
    spelling,
  );
}

/** The places of such words, in the order of the text, the longest first where they begin together. */
export function findSides(tokens: readonly Token[], index: PhraseIndex): Hit[] {
  let end = -1;
  return findPhrases(tokens, index)
    .sort((a, b) => a.first - b.first || b.last - a.last)
    .filter((hit) => {
      if (hit.first <= end) return false;
      end = hit.last;
      return true;
    });
}

/**
 * Tokens with "nearside" as "left side" or "right side", over the same letters; as a side that is left open while it is
 * not known which side traffic keeps to.
 *
 * A car with its wheel on the unusual side is read wrongly where the words go by the driver: the text does not tell.
 */
export function putSides(
  tokens: readonly Token[],
  sides: readonly Hit[],
  traffic: Traffic | undefined,
  { trafficSides }: Words,
  spelling: Spelling,
): Token[] {
  if (sides.length === 0) return [...tokens];
  const starts = new Map(sides.map((hit) => [hit.first, hit]));
  const put: Token[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] as Token;
    const hit = starts.get(i);
    if (hit === undefined) {
      put.push(token);
      continue;
    }
    const to = tokens[hit.last]?.to ?? token.to;
    const said = trafficSides[sideOf(hit.sense.id, traffic)]
      .split(" ")
      .flatMap((word) => spelling.spell(word));
    put.push(...said.map(({ bare, stem }) => ({ ...token, bare, stem, to })));
    const rest = tokens.slice(i + 1, hit.last + 1);
    put.push(...rest.filter((other) => !said.some(({ bare }) => bare === other.bare)));
    i = hit.last;
  }
  return put;
}

function sideOf(sense: string, traffic: Traffic | undefined): "left" | "right" | "open" {
  if (traffic === undefined) return "open";
  return (sense === "kerb") === (traffic === "left") ? "left" : "right";
}
