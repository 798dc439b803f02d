import { findingName } from "../engine/finding-id.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { State } from "./mentions.ts";

/** A finding that a text seems to tell of, with the words it came from. */
export interface Proposal {
  /** Finding id: "noise", "noise:small-bumps", "play-3-9@front-left", "pothole-strike". */
  readonly finding: string;
  readonly state: State;
  /** Grade of a graded observation, when the text tells one. */
  readonly level?: string;
  /** The exact words of the text; several places are joined by " … ". */
  readonly words: string;
  /** Where they stand in the text; `to` exclusive. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  /** 0 to 1: how sure the reading is; not a probability of a fault. */
  readonly confidence: number;
  /** The writer was not sure. */
  readonly hedged: boolean;
  readonly name: string;
}

/** One reading of some words as a finding. */
export interface Reading {
  readonly finding: string;
  readonly state: State;
  readonly level: string | undefined;
  readonly from: number;
  readonly to: number;
  readonly confidence: number;
  readonly hedged: boolean;
}

const MOST_SPANS = 6;
const REPEATED = 0.05;

/** One proposal a finding, from all its readings; where they differ the surer state wins, present when equal. */
export function proposalsOf(knowledge: Knowledge, text: string, readings: readonly Reading[]): Proposal[] {
  const byFinding = new Map<string, Reading[]>();
  for (const reading of readings) {
    const list = byFinding.get(reading.finding);
    if (list === undefined) byFinding.set(reading.finding, [reading]);
    else list.push(reading);
  }
  const proposals = [...byFinding].map(([finding, all]): Proposal => {
    const state = surerState(all);
    const chosen = all.filter((reading) => reading.state === state);
    const spans = distinctSpans(chosen).slice(0, MOST_SPANS);
    const best = Math.max(...chosen.map((reading) => reading.confidence));
    const level = chosen.find((reading) => reading.level !== undefined)?.level;
    return {
      finding,
      state,
      ...(level === undefined || state === "absent" ? {} : { level }),
      words: spans.map((span) => text.slice(span.from, span.to)).join(" … "),
      spans,
      confidence: Math.round(Math.min(0.97, best + REPEATED * (spans.length - 1)) * 100) / 100,
      hedged: chosen.every((reading) => reading.hedged),
      name: findingName(knowledge, finding),
    };
  });
  return proposals.sort(
    (a, b) =>
      (a.spans[0]?.from ?? 0) - (b.spans[0]?.from ?? 0) ||
      a.finding.length - b.finding.length ||
      (a.finding < b.finding ? -1 : 1),
  );
}

function surerState(readings: readonly Reading[]): State {
  const surest = (state: State) =>
    Math.max(
      0,
      ...readings.filter((reading) => reading.state === state).map((reading) => reading.confidence),
    );
  return surest("absent") > surest("present") ? "absent" : "present";
}

/** Spans in reading order, those within another left out. */
function distinctSpans(readings: readonly Reading[]): { from: number; to: number }[] {
  const sorted = readings
    .map(({ from, to }) => ({ from, to }))
    .sort((a, b) => a.from - b.from || b.to - a.to);
  const kept: { from: number; to: number }[] = [];
  for (const span of sorted) {
    const last = kept.at(-1);
    if (last === undefined || span.from >= last.to) kept.push(span);
    else last.to = Math.max(last.to, span.to);
  }
  return kept;
}
