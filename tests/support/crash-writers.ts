import { once } from "node:events";
import { setTimeout as sleep } from "node:timers/promises";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { buildProgram, type Ended, endOf, startProgram } from "./child-program.ts";

/** One delivery that a writer was told is kept. */
export interface Acknowledged {
  readonly caseId: string;
  readonly ids: readonly string[];
}

/** What came of letting writers die. */
export interface Crashes {
  /** Writers that were killed. */
  readonly kills: number;
  readonly acknowledged: readonly Acknowledged[];
  /** What writers wrote to standard error of their own accord; empty when all of them died by the kill alone. */
  readonly errors: readonly string[];
}

const AT_ONCE = 4;
/** Share of writers that are killed while they start, and how long a start may take, in milliseconds. */
const EARLY = 0.25;
const STARTING = 400;
/** Longest time from a writer's first acknowledgement to its end, in milliseconds. */
const LIFE = 120;

/**
 * Starts writers of tests/support/programs, four at a time on one database, and kills each at a random moment.
 *
 * Shape   broken: in these rounds the writers are left alone, and `breakServer` takes the server away from under them.
 */
export async function letWritersDie(options: {
  readonly database: string;
  readonly rounds: number;
  readonly seed: number;
  readonly broken?: readonly number[];
  readonly breakServer?: () => Promise<void>;
}): Promise<Crashes> {
  const { database, rounds, seed, broken = [], breakServer } = options;
  const program = buildProgram("write-entries.ts");
  const uniform = seededUniform(seed);
  let kills = 0;
  const acknowledged: Acknowledged[] = [];
  const errors: string[] = [];
  const keep = ({ lines, errors: text, code }: Ended, spared: boolean): void => {
    acknowledged.push(...lines.map((line) => JSON.parse(line) as Acknowledged));
    if (spared) return;
    kills += code === null ? 1 : 0;
    if (text !== "") errors.push(text);
  };
  for (let round = 0; round < rounds; round++) {
    const spared = broken.includes(round);
    const lives = Array.from({ length: AT_ONCE }, async (_, i) => {
      const early = uniform() < EARLY;
      const wait = uniform() * (early ? STARTING : LIFE);
      const writer = startProgram(program, [database, String(seed + round * AT_ONCE + i), `r${round}w${i}`]);
      const end = endOf(writer);
      const started = Promise.race([once(writer.stdout, "data"), end]);
      if (!early || spared) await started;
      if (spared) return end;
      await sleep(wait);
      writer.kill("SIGKILL");
      return end;
    });
    if (spared) {
      await sleep(STARTING + uniform() * LIFE);
      await breakServer?.();
    }
    for (const ended of await Promise.all(lives)) keep(ended, spared);
  }
  return { kills, acknowledged, errors };
}
