import { repairOfSuspect, type Weighing } from "../engine/index.ts";

/** A repair, as `part@place`, with its chance to explain what is known. */
export interface RepairChance {
  readonly repair: string;
  readonly chance: number;
}

/** Repairs by their chance to explain what is known, likeliest first; ties by name. */
export function likelyRepairs({ weighed }: Weighing): RepairChance[] {
  const chances = new Map<string, number>();
  for (const { suspect, explains } of weighed.ranking) {
    const repair = repairOfSuspect(suspect);
    chances.set(repair, (chances.get(repair) ?? 0) + explains);
  }
  return [...chances]
    .map(([repair, chance]) => ({ repair, chance }))
    .sort((a, b) => b.chance - a.chance || (a.repair < b.repair ? -1 : 1));
}
