import { type Grounded, groundCar } from "../../lib/engine/index.ts";
import type { Costs } from "../../lib/knowledge/schema/costs.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { plainCosts } from "./plain-costs.ts";
import { tinyKnowledge } from "./tiny-knowledge.ts";

/** A search small enough that its optimum can be worked out: a few faults behind one complaint, checks of one finding each. */
export interface SmallInstance {
  readonly grounded: Grounded;
  readonly costs: Costs;
  readonly complaint: string;
  readonly prior: readonly number[];
  /** Chance that each fault shows the complaint, and that the complaint comes from elsewhere. */
  readonly shows: readonly number[];
  readonly leak: number;
  /** Part and place of each fault, as the engine names its repair. */
  readonly repairs: readonly string[];
  /** Minutes of each repair, with seeing that it is gone. */
  readonly repairMinutes: readonly number[];
  readonly checks: readonly SmallCheck[];
  readonly setUps: readonly string[];
  /** Minutes from one set-up to another. */
  readonly change: readonly (readonly number[])[];
}

/** One check of one finding. */
export interface SmallCheck {
  readonly id: string;
  readonly finding: string;
  readonly minutes: number;
  readonly setUp: number;
  /** Chance that each fault alone gives the finding; 0 for most. */
  readonly strengths: readonly number[];
  readonly leak: number;
}

const PLACE = "front";
const COMPLAINT = "noise";

/** A random instance, by default of five faults, seven checks and three set-ups. Everything in it is invented. */
export function smallInstance(seed: number, faultCount = 5, checkCount = 7): SmallInstance {
  const uniform = seededUniform(seed);
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const faults = Array.from({ length: faultCount }, (_, i) => i);
  const setUps = ["standing", "hanging", "wheel-off"];
  const up = between(2, 8);
  const off = up + between(2, 6);
  const change = [
    [0, up, off],
    [up, 0, off - up],
    [off, off - up, 0],
  ];
  const prior = faults.map(() => between(0.03, 0.35));
  const shows = faults.map(() => between(0.3, 0.9));
  const work = faults.map(() => Math.round(between(15, 120)));
  const checks = Array.from({ length: checkCount }, (_, j): SmallCheck => {
    const parents = new Set([Math.floor(uniform() * faultCount)]);
    if (uniform() < 0.5) parents.add(Math.floor(uniform() * faultCount));
    return {
      id: `check-${j}@${PLACE}`,
      finding: `finding-${j}@${PLACE}`,
      minutes: Math.round(between(1, 15)),
      setUp: Math.floor(uniform() * 3),
      strengths: faults.map((i) => (parents.has(i) ? between(0.4, 0.97) : 0)),
      leak: between(0.01, 0.1),
    };
  });
  const costs: Costs = {
    ...plainCosts,
    refer: { minutes: Math.round(between(150, 400)), fee: 0 },
    stop: { ...plainCosts.stop, margin: 1 },
  };
  const leak = between(0.01, 0.05);
  const knowledge = knowledgeOf({ prior, shows, work, checks, setUps, change, leak, costs });
  return {
    grounded: groundCar(knowledge, {}),
    costs,
    complaint: COMPLAINT,
    prior,
    shows,
    leak,
    repairs: faults.map((i) => `part-${i}@${PLACE}`),
    repairMinutes: work.map((minutes) => minutes + costs.verifyMinutes),
    checks,
    setUps,
    change,
  };
}

interface Numbers extends Pick<SmallInstance, "prior" | "shows" | "checks" | "setUps" | "change" | "leak"> {
  readonly work: readonly number[];
  readonly costs: Costs;
}

function knowledgeOf(numbers: Numbers): Knowledge {
  const { prior, shows, work, checks, setUps, change, leak, costs } = numbers;
  const { knowledge } = tinyKnowledge();
  const weight = (p: number) => ({ p, spread: 0.5, basis: "common-practice" });
  const [part] = knowledge.parts;
  const fault = knowledge.faults.find((f) => f.severity.word === "minor");
  const [complaint] = knowledge.complaints;
  const [observation] = knowledge.observations;
  const [check] = knowledge.checks;
  if (!part || !fault || !complaint || !observation || !check)
    throw new Error("the tiny knowledge lacks a record");
  const { when: _, ...anywhere } = part;
  return {
    ...knowledge,
    costs,
    setUps: {
      ...knowledge.setUps,
      setUps: setUps.map((id) => ({ id, name: id, about: id, needs: "nothing" as const })),
      minutes: Object.fromEntries(
        setUps.map((from, a) => [from, Object.fromEntries(setUps.map((to, b) => [to, change[a]?.[b] ?? 0]))]),
      ),
      start: setUps[0] ?? "",
    },
    parts: prior.map((_p, i) => ({ ...anywhere, id: `part-${i}`, places: [PLACE] })),
    faults: prior.map((share, i) => ({
      ...fault,
      id: `fault-${i}`,
      part: `part-${i}`,
      life: { share, basis: "common-practice" },
      modifiers: [],
      contexts: {},
      shows: [{ complaint: COMPLAINT, strength: weight(shows[i] ?? 0.5), features: {} }],
      links: checks.flatMap(({ strengths }, j) =>
        (strengths[i] ?? 0) > 0
          ? [{ observation: `finding-${j}`, levels: [weight(strengths[i] ?? 0.5)] }]
          : [],
      ),
      decisive: [],
      remedy: { ...fault.remedy, minutes: work[i] ?? 60 },
    })),
    complaints: [{ ...complaint, id: COMPLAINT, leak }],
    features: [],
    contexts: [],
    observations: checks.map((c, j) => ({
      ...observation,
      id: `finding-${j}`,
      levels: ["present"],
      leak: [c.leak],
      places: [PLACE],
    })),
    checks: checks.map((c, j) => ({
      ...check,
      id: `check-${j}`,
      minutes: c.minutes,
      setUp: setUps[c.setUp] ?? "",
      does: [],
      settles: [`finding-${j}`],
      places: [PLACE],
    })),
  };
}
