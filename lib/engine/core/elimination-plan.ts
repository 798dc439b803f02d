import { popCount } from "../../maths/pop-count.ts";

/** A suspect with two or more positive findings, as the planner sees it. */
export interface HeavyFault {
  readonly fault: number;
  /** Positive findings that it can show. */
  readonly bits: Int32Array;
  readonly w: Float64Array;
}

/** One step of the frontier programme; positions are places in the table's index. */
export type Step =
  | { readonly kind: "open"; readonly bit: number }
  | {
      readonly kind: "fault";
      readonly fault: number;
      readonly bits: Int32Array;
      readonly positions: Int32Array;
      readonly w: Float64Array;
    }
  | { readonly kind: "close"; readonly bit: number; readonly position: number };

/** An order of steps, and the sum over faults of 2^open * (links + 2). */
export interface EliminationPlan {
  readonly steps: readonly Step[];
  readonly cost: number;
}

/** A plan as cheap as this is taken without trying further starts. */
const CHEAP_ENOUGH = 2_000;
/** Starts that are tried at most; each costs about the number of findings times the number of links. */
const MAX_STARTS = 32;
/** While it is only asked whether there is a plan, fewer are tried: it is asked a dozen times over. */
const FEW_STARTS = 8;

/**
 * Plans one connected group: greedily close the finding whose parents need the fewest open bits.
 *
 * Some findings are tried as the start; the cheapest plan wins, the earliest on a tie.
 * Returns undefined when no start stays within the bound.
 */
export function eliminationPlan(
  faults: readonly HeavyFault[],
  bound = Number.POSITIVE_INFINITY,
  firstWithin = false,
): EliminationPlan | undefined {
  const group = groupOf(faults);
  const starts = Math.min(group.bitIds.length, firstWithin ? FEW_STARTS : MAX_STARTS);
  let best: { order: number[]; cost: number } | undefined;
  for (let start = 0; start < starts; start++) {
    const limit = best ? best.cost : bound;
    const found = greedyOrder(group, start, limit);
    if (found && (!best || found.cost < best.cost)) best = found;
    if (best && (firstWithin || best.cost <= CHEAP_ENOUGH)) break;
  }
  return best && { steps: stepsOf(faults, best.order), cost: best.cost };
}

interface Group {
  readonly bitIds: number[];
  /** Words of 32 findings needed to hold a set. */
  readonly words: number;
  /** Set of findings of each fault, `words` words each. */
  readonly masks: Int32Array;
  /** Local finding numbers of each fault. */
  readonly bitsOf: number[][];
  /** Faults of each finding. */
  readonly faultsOf: number[][];
}

function groupOf(faults: readonly HeavyFault[]): Group {
  const local = new Map<number, number>();
  const bitIds: number[] = [];
  for (const { bits } of faults) {
    for (const bit of bits) {
      if (!local.has(bit)) {
        local.set(bit, bitIds.length);
        bitIds.push(bit);
      }
    }
  }
  const words = (bitIds.length + 31) >>> 5;
  const masks = new Int32Array(words * faults.length);
  const faultsOf: number[][] = bitIds.map(() => []);
  const bitsOf = faults.map(({ bits }, f) =>
    Array.from(bits, (bit) => {
      const b = local.get(bit) as number;
      const at = f * words + (b >>> 5);
      masks[at] = (masks[at] as number) | (1 << (b & 31));
      (faultsOf[b] as number[]).push(f);
      return b;
    }),
  );
  return { bitIds, words, masks, bitsOf, faultsOf };
}

function greedyOrder(
  group: Group,
  start: number,
  limit: number,
): { order: number[]; cost: number } | undefined {
  const { words, masks, bitsOf, faultsOf, bitIds } = group;
  const open = new Int32Array(words);
  const waiting = faultsOf.map((list) => list.length);
  const done = new Uint8Array(bitsOf.length);
  const order: number[] = [];
  /** Findings of the faults that each finding still waits for; made anew only when one of them was taken. */
  const needed = new Int32Array(words * bitIds.length);
  const stale = new Uint8Array(bitIds.length).fill(1);
  let openCount = 0;
  let cost = 0;

  const newBits = (f: number): number => {
    let count = 0;
    for (let word = 0; word < words; word++) {
      count += popCount((masks[f * words + word] as number) & ~(open[word] as number));
    }
    return count;
  };
  const take = (f: number): void => {
    const bits = bitsOf[f] as number[];
    for (let word = 0; word < words; word++) {
      const added = (masks[f * words + word] as number) & ~(open[word] as number);
      openCount += popCount(added);
      open[word] = (open[word] as number) | added;
    }
    cost += 2 ** openCount * (bits.length + 2);
    done[f] = 1;
    order.push(f);
    for (const b of bits) {
      waiting[b] = (waiting[b] as number) - 1;
      stale[b] = 1;
      if (waiting[b] === 0) {
        open[b >>> 5] = (open[b >>> 5] as number) & ~(1 << (b & 31));
        openCount--;
      }
    }
  };
  const bitsNeeded = (b: number): number => {
    const at = b * words;
    if (stale[b] === 1) {
      stale[b] = 0;
      needed.fill(0, at, at + words);
      for (const f of faultsOf[b] as number[]) {
        if (done[f]) continue;
        for (let word = 0; word < words; word++) {
          needed[at + word] = (needed[at + word] as number) | (masks[f * words + word] as number);
        }
      }
    }
    let count = 0;
    for (let word = 0; word < words; word++) {
      count += popCount((needed[at + word] as number) | (open[word] as number));
    }
    return count;
  };

  let next = start;
  while (order.length < bitsOf.length) {
    const pending = (faultsOf[next] as number[]).filter((f) => !done[f]);
    while (pending.length > 0) {
      let bestAt = 0;
      let fewest = Number.POSITIVE_INFINITY;
      for (let at = 0; at < pending.length && fewest > 0; at++) {
        const count = newBits(pending[at] as number);
        if (count < fewest) {
          fewest = count;
          bestAt = at;
        }
      }
      take(pending[bestAt] as number);
      pending.splice(bestAt, 1);
      if (cost >= limit) return undefined;
    }
    let fewest = Number.POSITIVE_INFINITY;
    for (let b = 0; b < bitIds.length; b++) {
      if (waiting[b] === 0) continue;
      const count = bitsNeeded(b);
      if (count < fewest) {
        fewest = count;
        next = b;
      }
    }
  }
  return { order, cost };
}

function stepsOf(faults: readonly HeavyFault[], order: readonly number[]): Step[] {
  const waiting = new Map<number, number>();
  for (const { bits } of faults) for (const bit of bits) waiting.set(bit, (waiting.get(bit) ?? 0) + 1);
  const open: number[] = [];
  const steps: Step[] = [];
  for (const f of order) {
    const { fault, bits, w } = faults[f] as HeavyFault;
    for (const bit of bits) {
      if (!open.includes(bit)) {
        open.push(bit);
        steps.push({ kind: "open", bit });
      }
    }
    steps.push({ kind: "fault", fault, bits, w, positions: bits.map((bit) => open.indexOf(bit)) });
    for (const bit of bits) {
      const left = (waiting.get(bit) as number) - 1;
      waiting.set(bit, left);
      if (left === 0) {
        const position = open.indexOf(bit);
        open.splice(position, 1);
        steps.push({ kind: "close", bit, position });
      }
    }
  }
  return steps;
}
