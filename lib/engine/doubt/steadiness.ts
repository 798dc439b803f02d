import type { Answer } from "../answers.ts";
import { gatherAnswers } from "../gathered.ts";
import type { Grounded } from "../ground.ts";
import { type RankingRow, rankingRows } from "../ranking-rows.ts";
import type { Weighed } from "../weigh.ts";
import { movedWeights } from "./moved-weights.ts";
import { quickLookAt } from "./quick-look.ts";

/** A line of the ranking with how often it led. */
export interface Rival {
  readonly row: RankingRow;
  /** Share of the draws in which it leads. */
  readonly share: number;
}

/** How well the leader's place holds against the doubt in the knowledge's own weights. */
export interface Steadiness {
  readonly kind: "steady" | "either-of-two" | "open";
  readonly leader: Rival;
  /** Lines that take over, most often first. */
  readonly rivals: readonly Rival[];
  /** Chance of the leader in the draws: one in ten lie below `low`, one in ten above `high`. */
  readonly low: number;
  readonly high: number;
  readonly draws: number;
}

/** How draws are made. */
export interface SteadinessOptions {
  /** Uniform numbers in 0..1 (1 excluded); from a seed, so that the same case gives the same answer. */
  readonly uniform: () => number;
  /** 200 when left out. */
  readonly draws?: number | undefined;
}

const DRAWS = 200;
/** The leader holds at least this share, when the knowledge does not say. */
const STEADY_FROM = 0.8;
/** Lines below this chance cannot take over often enough to matter. */
const SMALLEST = 0.002;
/** Rivals that lead more seldom are not named. */
const RAREST = 0.02;

/**
 * How often the leader of the ranking stays the leader when every strength, prior and leak moves within its spread.
 *
 * The lines are those of the ranking as it stands; of a line with several places, what they explain together is taken to
 * stay the same share. Undefined when there is nothing to explain.
 * Errors: as `weigh`.
 */
export function steadiness(
  grounded: Grounded,
  answers: readonly Answer[],
  weighed: Weighed,
  { uniform, draws = DRAWS }: SteadinessOptions,
): Steadiness | undefined {
  const draw = drawSteadiness(grounded, answers, weighed, uniform);
  draw?.more(draws);
  return draw?.soFar();
}

/** Draws that are made a few at a time, so that a newer answer need not wait for the last of them. */
export interface SteadinessDraws {
  more(draws: number): void;
  /** What the draws so far say; undefined before the first. */
  soFar(): Steadiness | undefined;
}

/** As `steadiness`, a few draws at a time; undefined when there is nothing to explain. */
export function drawSteadiness(
  grounded: Grounded,
  answers: readonly Answer[],
  weighed: Weighed,
  uniform: () => number,
): SteadinessDraws | undefined {
  if (weighed.target === "none") return undefined;
  const rows = rankingRows(grounded, weighed).filter((row, k) => k === 0 || row.explains >= SMALLEST);
  const lines = rows.map((row) => {
    const sum = row.suspects.reduce((total, r) => total + r.explains, 0);
    return { suspects: row.suspects.map((r) => r.suspect.index), kept: sum > 0 ? row.explains / sum : 1 };
  });
  const next = movedWeights(grounded, gatherAnswers(grounded, answers), uniform);
  const led = rows.map(() => 0);
  const chances: number[] = [];
  const one = (): void => {
    const moved = next();
    const { explains } = quickLookAt(moved.grounded, moved.gathered, COST_OF_A_DRAW);
    let best = 0;
    let most = -1;
    lines.forEach(({ suspects, kept }, k) => {
      const chance = kept * suspects.reduce((sum, i) => sum + (explains[i] ?? 0), 0);
      if (k === 0) chances.push(Math.min(1, chance));
      if (chance > most) {
        best = k;
        most = chance;
      }
    });
    led[best] = (led[best] ?? 0) + 1;
  };
  const from = grounded.knowledge.doubt?.steadyFrom ?? STEADY_FROM;
  return {
    more: (draws) => {
      for (let draw = 0; draw < draws; draw++) one();
    },
    soFar: () => (chances.length === 0 ? undefined : summed(rows, led, chances, from)),
  };
}

function summed(
  rows: readonly RankingRow[],
  led: readonly number[],
  chances: readonly number[],
  from: number,
): Steadiness | undefined {
  const draws = chances.length;
  const [leader, ...others] = rows.map((row, k): Rival => ({ row, share: (led[k] ?? 0) / draws }));
  if (leader === undefined) return undefined;
  const rivals = others
    .filter((r) => r.share >= RAREST)
    .sort((a, b) => b.share - a.share || (a.row.id < b.row.id ? -1 : 1));
  const sorted = chances.toSorted((a, b) => a - b);
  return {
    kind: kindOf(leader.share, rivals[0]?.share ?? 0, from),
    leader,
    rivals,
    low: sorted[Math.floor(0.1 * draws)] ?? 0,
    high: sorted[Math.ceil(0.9 * draws) - 1] ?? 0,
    draws,
  };
}

/** Links beyond this cost are cut in a draw: what is lost is small beside what the draws themselves move. */
const COST_OF_A_DRAW = 2e4;

function kindOf(leader: number, rival: number, from: number): Steadiness["kind"] {
  if (leader >= from) return "steady";
  return leader + rival >= from ? "either-of-two" : "open";
}
