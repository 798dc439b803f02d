import type { Entry } from "./entries.ts";

/**
 * Ids of the entries whose effect is taken back.
 *
 * An entry is retracted when a retraction that is not itself retracted names it, whatever the clocks of the devices
 * say. The opening stays: there is no case without it. Retractions that name each other in a ring have no effect.
 *
 * Shape   entries: once each (see orderEntries).
 * Errors  none: a retraction of an entry that has not arrived waits for it.
 */
export function retractedIds(entries: readonly Entry[]): ReadonlySet<string> {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const waitingFor = new Map<string, number>();
  for (const entry of entries) {
    const target = targetOf(entry);
    if (target !== undefined) waitingFor.set(target, (waitingFor.get(target) ?? 0) + 1);
  }
  const retracted = new Set<string>();
  const settled = new Set<string>();
  // An entry is settled once every retraction of it is settled, or one of them is known to hold.
  const ready = entries.filter((entry) => !waitingFor.has(entry.id)).map((entry) => entry.id);
  for (let id = ready.pop(); id !== undefined; id = ready.pop()) {
    if (settled.has(id)) continue;
    settled.add(id);
    const entry = byId.get(id);
    const target = entry && targetOf(entry);
    const aim = target === undefined ? undefined : byId.get(target);
    if (target === undefined || aim === undefined || settled.has(target)) continue;
    const left = (waitingFor.get(target) ?? 1) - 1;
    waitingFor.set(target, left);
    const holds = !retracted.has(id);
    if (holds && aim.kind !== "opened") retracted.add(target);
    if (holds || left === 0) ready.push(target);
  }
  return retracted;
}

function targetOf(entry: Entry): string | undefined {
  return entry.kind === "retracted" && "entry" in entry ? entry.entry : undefined;
}
