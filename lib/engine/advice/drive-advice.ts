import type { Advice } from "../../knowledge/schema/advice.ts";
import type { Grounded } from "../ground.ts";
import type { StopNotice } from "../stop-notices.ts";
import type { Weighed } from "../weigh.ts";

/** A dangerous fault that speaks against driving. */
export interface Danger {
  readonly suspect: string;
  /** Chance that it is there and the answers speak for it. */
  readonly chance: number;
  /** Chance from which this fault alone gives a notice: the worse the fault, the lower. */
  readonly bar: number;
  /** What to do if it is this one. */
  readonly say: string;
}

/** What to say about driving before anybody has seen the car. Never that it is safe. */
export interface DriveAdvice {
  readonly level: string;
  readonly name: string;
  readonly say: string;
  /** Sum over dangerous faults of chance over bar; 1 is as bad as one fault at its bar. */
  readonly danger: number;
  /** The faults that count most, gravest first. */
  readonly because: readonly Danger[];
  readonly notices: readonly StopNotice[];
  readonly stopIf: readonly string[];
}

/** Dangers named to the person at the desk; the sum counts all of them. */
const MOST_NAMED = 4;

/**
 * Whether to drive: the chance of each dangerous fault over the bar of that fault, summed.
 *
 * What counts is what the answers have added to a fault's prior, or its chance to explain the complaint when that is more:
 * silent wear that any car of this age may have is no reason to have this one recovered. A notice of a dangerous fault gives
 * the gravest level, any other notice at least the second.
 */
export function driveAdvice(grounded: Grounded, weighed: Weighed, advice: Advice): DriveAdvice {
  const dangers = weighed.ranking.flatMap(({ suspect, explains, present }): Danger[] => {
    const fault = grounded.faults.get(suspect.fault);
    if (fault?.stop === undefined || fault.severity.word !== "dangerous") return [];
    const chance = Math.max(explains, present - (grounded.prior[suspect.index] ?? 0));
    return chance > 0 ? [{ suspect: suspect.id, chance, bar: fault.stop.from, say: fault.stop.say }] : [];
  });
  dangers.sort((a, b) => b.chance / b.bar - a.chance / a.bar || (a.suspect < b.suspect ? -1 : 1));
  const danger = dangers.reduce((sum, d) => sum + d.chance / d.bar, 0);
  const { notices } = weighed;
  const grave = notices.some(({ suspect }) => isDangerous(grounded, suspect));
  const least = grave ? 0 : notices.length > 0 ? 1 : advice.levels.length - 1;
  const byDanger = advice.levels.findIndex((level) => danger >= level.from);
  const level = advice.levels[Math.min(byDanger, least)] ?? advice.levels[0];
  return {
    level: level?.id ?? "",
    name: level?.name ?? "",
    say: level?.say ?? "",
    danger,
    because: dangers.slice(0, MOST_NAMED),
    notices,
    stopIf: advice.stopIf,
  };
}

function isDangerous(grounded: Grounded, id: string): boolean {
  const suspect = grounded.suspects.find((s) => s.id === id);
  return grounded.faults.get(suspect?.fault ?? "")?.severity.word === "dangerous";
}
