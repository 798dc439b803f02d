import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { type PlayedCase, playWorkedCase, type WorkedCaseInput } from "./worked-case.ts";

/** A chance that changed by more than this has moved. */
export const MOVED_BY = 0.05;

/** A worked case as two versions of the knowledge see it. */
export interface ComparedCase {
  readonly id: string;
  readonly title: string;
  readonly before: PlayedCase;
  readonly after: PlayedCase;
  /** What moved, in words; empty when nothing did. */
  readonly moved: readonly string[];
}

/**
 * What two versions of the knowledge make of the same worked cases.
 *
 * A case has moved when another line leads, or the chance of the leader or of the true part changed by more than `MOVED_BY`.
 * Errors  as `playWorkedCase`.
 */
export function compareCases(
  before: Knowledge,
  after: Knowledge,
  cases: readonly WorkedCaseInput[],
): ComparedCase[] {
  return cases.map((worked) => {
    const pair = { before: playWorkedCase(before, worked), after: playWorkedCase(after, worked) };
    return { id: worked.id, title: worked.title, ...pair, moved: whatMoved(pair.before, pair.after) };
  });
}

/** What moved from one weighing of a case to another, in words. */
export function whatMoved(before: PlayedCase, after: PlayedCase): string[] {
  const words: string[] = [];
  const { leader, truth } = after;
  if (before.leader.id !== leader.id) {
    words.push(
      `the leader was ${before.leader.name} (${percent(before.leader.probability)}), now it is ${leader.name} (${percent(leader.probability)})`,
    );
  } else if (movedFar(before.leader.probability, leader.probability)) {
    words.push(`the leader, ${leader.name}, ${went(before.leader.probability, leader.probability)}`);
  }
  const toldAlready = truth.id === leader.id && before.truth.id === before.leader.id;
  if (!toldAlready && movedFar(before.truth.probability, truth.probability)) {
    const rank =
      before.truth.rank === truth.rank
        ? ""
        : `, ${rankWords(before.truth.rank)} before and ${rankWords(truth.rank)} now`;
    words.push(`the true part, ${truth.name}, ${went(before.truth.probability, truth.probability)}${rank}`);
  }
  return words;
}

function movedFar(before: number, after: number): boolean {
  return Math.abs(after - before) > MOVED_BY;
}

function went(before: number, after: number): string {
  return `${after > before ? "rose" : "fell"} from ${percent(before)} to ${percent(after)}`;
}

function rankWords(rank: number): string {
  return rank === 0 ? "not listed" : `number ${rank}`;
}

function percent(p: number): string {
  return `${(100 * p).toFixed(p < 0.01 ? 1 : 0)} %`;
}
