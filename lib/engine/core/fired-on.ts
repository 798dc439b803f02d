import type { GroupContext, GroupRun } from "./group-run.ts";

/**
 * P(at least one link of the suspect to these findings fired | E), for every suspect.
 *
 * A link that was cut counts as an independent event.
 */
export function firedOn(
  context: GroupContext,
  groups: readonly GroupRun[],
  de: Float64Array,
  targets: readonly number[],
): Float64Array {
  const { plan, odds } = context;
  const wanted = new Set(targets);
  const fired = new Float64Array(odds.alpha.length);
  plan.homes.forEach((home, fault) => {
    if (home.kind === "absorbed" && wanted.has(home.bit)) {
      fired[fault] = (odds.alpha[fault] as number) * home.w * (de[home.bit] as number);
    }
  });
  for (const group of groups) {
    group.steps.forEach((step, t) => {
      if (step.kind !== "fault") return;
      const asked = Array.from(step.bits.keys()).filter((b) => wanted.has(step.bits[b] as number));
      if (asked.length === 0) return;
      // Copied only when there is a second target to go on to.
      const stored = group.after[t] as Float64Array;
      const links = asked.length > 1 ? stored.slice() : stored;
      let total = 0;
      asked.forEach((b, turn) => {
        const stride = 1 << (step.positions[b] as number);
        const w = step.w[b] as number;
        total += w * firesAt(links, group.before[t] as Float64Array, stride);
        if (turn + 1 < asked.length) silence(links, stride, w);
      });
      fired[step.fault] = total;
    });
  }
  for (const { bit, fault, fires } of plan.cuts) {
    if (!wanted.has(bit)) continue;
    const cut = fires * (de[bit] as number);
    fired[fault] = 1 - (1 - (fired[fault] as number)) * (1 - cut);
  }
  return fired.map((value) => Math.min(1, Math.max(0, value)));
}

/** Weight of a link that fires: whatever the finding was before, it is explained after. */
function firesAt(links: Float64Array, before: Float64Array, stride: number): number {
  let sum = 0;
  for (let base = 0; base < links.length; base += 2 * stride) {
    for (let s = base; s < base + stride; s++) {
      sum += (links[s + stride] as number) * ((before[s] as number) + (before[s + stride] as number));
    }
  }
  return sum;
}

/** Takes the firing of one link back out of the stored transposed links, leaving it silent. */
function silence(links: Float64Array, stride: number, w: number): void {
  for (let base = 0; base < links.length; base += 2 * stride) {
    for (let s = base; s < base + stride; s++) {
      const high = links[s + stride] as number;
      links[s] = (links[s] as number) - w * high;
      links[s + stride] = (1 - w) * high;
    }
  }
}
