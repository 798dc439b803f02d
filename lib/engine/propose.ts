import type { CompiledCheck, Knowledge } from "../knowledge/schema/compiled.ts";
import type { Answer } from "./answers.ts";
import { type PlacedCheck, placedChecks } from "./check-places.ts";
import { checkBits, type CheckFinding, type Component } from "./core/index.ts";
import { finerComponents } from "./finer-components.ts";
import { forbiddenCheck } from "./forbidden.ts";
import type { Grounded } from "./ground.ts";
import { mergeByRepair } from "./merge-by-repair.ts";
import { openQuestions } from "./questions.ts";
import type { Weighing } from "./weigh.ts";

/** Who does the next check, with what. */
export interface ProposeOptions {
  /** Set-up that the car is in; the knowledge's start when left out. */
  readonly setUp?: string | undefined;
  readonly who?: "owner" | "driver" | "technician" | undefined;
  /** Is there a lift on whose ramps the car can stand? Yes when left out. */
  readonly lift?: boolean | undefined;
  /** Is there a second person? Yes when left out. */
  readonly helper?: boolean | undefined;
  /** Checks that cannot be done, by id with or without the place. */
  readonly notPossible?: readonly string[] | undefined;
  /** Leave questions out, or ask nothing else. */
  readonly only?: "checks" | "questions" | undefined;
  readonly limit?: number | undefined;
}

/** One finding that a check settles, with the grades it can have. */
export interface Settled {
  readonly finding: string;
  readonly levels: readonly string[];
}

/** A check or question worth doing next. */
export interface ProposedCheck {
  /** `check@place`, or `ask:finding`. */
  readonly id: string;
  readonly kind: "check" | "question";
  readonly check: CompiledCheck | undefined;
  readonly place: string | undefined;
  /** Name of the check, or the question. */
  readonly name: string;
  readonly minutes: number;
  /** Minutes to bring the car from the present set-up into the one needed. */
  readonly setUpMinutes: number;
  readonly setUp: string;
  /** Expected information about what explains the complaint, in bits. */
  readonly gainBits: number;
  /** gainBits per minute, set-up included: the order of the list. */
  readonly score: number;
  readonly settles: readonly Settled[];
  /** For a question: chance of the answer "yes". */
  readonly yes: number | undefined;
}

/** Most sets of causes that gains are worked out over. */
const MOST_COMPONENTS = 24;
/** While no check tells as many bits, the causes are told apart more finely. */
const TELLS_ENOUGH = 0.03;
/** Gains below this are rounding, not information. */
const SMALLEST_GAIN = 1e-3;
/** Who can do what the ones before can do. */
const RANKS = { owner: 0, driver: 1, technician: 2 } as const;

/**
 * The next checks, best first: expected information about what explains the complaint per minute, set-up included.
 *
 * Left out: what this person cannot do, what was settled by hand already, what the answers forbid, and road tests while
 * a stop notice stands. Suspects with the same part at the same place are one repair, so nothing is spent on telling
 * them apart. With nothing to explain the list is empty.
 */
export function proposeChecks(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: ProposeOptions = {},
): ProposedCheck[] {
  const { explanation } = weighing;
  if (explanation === undefined) return [];
  const proposed = proposedOver(
    explanation.components(MOST_COMPONENTS),
    grounded,
    answers,
    weighing,
    options,
  );
  // The likely causes are looked at and not found: what can still be found out is about the rarer ones.
  const wider = proposed.some((p) => p.gainBits >= TELLS_ENOUGH)
    ? proposed
    : proposedOver(finerComponents(explanation), grounded, answers, weighing, options);
  return wider.slice(0, options.limit ?? wider.length);
}

function proposedOver(
  components: readonly Component[],
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: ProposeOptions,
): ProposedCheck[] {
  const merged = mergeByRepair(grounded, components);
  const named = new Set(components.flatMap((c) => c.set));
  const { setUps, reports } = grounded.knowledge;
  const from = options.setUp ?? setUps.start;
  const proposed: ProposedCheck[] = [];
  if (options.only !== "questions") {
    const settled = new Set(
      answers.flatMap((a) => (a.by === "check" || a.state === "unknown" ? [a.finding] : [])),
    );
    for (const placed of placedChecks(grounded)) {
      const open = placed.nodes.filter((n) => !settled.has(n.id));
      if (
        open.length === 0 ||
        !bearsOn(placed, named) ||
        !canBeDone(grounded, answers, weighing, placed, options)
      )
        continue;
      // The list itself where nothing is settled yet: the core keeps what it worked out of it.
      const findings =
        open.length === placed.nodes.length
          ? placed.findings
          : placed.findings.filter((_, k) => !settled.has(placed.nodes[k]?.id ?? ""));
      const gainBits = bitsOf(components, merged, findings);
      const setUpMinutes = setUps.minutes[from]?.[placed.check.setUp] ?? 0;
      proposed.push({
        id: placed.id,
        kind: "check",
        check: placed.check,
        place: placed.place,
        name: placed.check.name,
        minutes: placed.check.minutes,
        setUpMinutes,
        setUp: placed.check.setUp,
        gainBits,
        score: gainBits / (placed.check.minutes + setUpMinutes),
        settles: open.map((n) => ({ finding: n.id, levels: n.observation.levels })),
        yes: undefined,
      });
    }
  }
  if (options.only !== "checks") {
    const asked = new Set(answers.map((a) => a.finding));
    for (const q of openQuestions(grounded, weighing, components, merged, asked)) {
      if (RANKS[q.who] > RANKS[options.who ?? "technician"]) continue;
      proposed.push({
        id: `ask:${q.finding}`,
        kind: "question",
        check: undefined,
        place: undefined,
        name: q.ask,
        minutes: reports.questionMinutes,
        setUpMinutes: 0,
        setUp: from,
        gainBits: q.gainBits,
        score: q.gainBits / reports.questionMinutes,
        settles: [{ finding: q.finding, levels: ["present"] }],
        yes: q.yes,
      });
    }
  }
  return proposed
    .filter((p) => p.gainBits >= SMALLEST_GAIN)
    .sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
}

const BITS = new WeakMap<readonly Component[], WeakMap<readonly CheckFinding[], number>>();

/** `checkBits`, kept while the components are: a batch and a decision ask for what the proposals asked for. */
function bitsOf(
  components: readonly Component[],
  merged: Int32Array,
  findings: readonly CheckFinding[],
): number {
  const kept = BITS.get(components) ?? new WeakMap<readonly CheckFinding[], number>();
  BITS.set(components, kept);
  const bits = kept.get(findings) ?? checkBits(components, merged, findings);
  kept.set(findings, bits);
  return bits;
}

/** Can any named cause show in the check? One that cannot tells nothing of what explains the complaint. */
export function bearsOn({ nodes }: Pick<PlacedCheck, "nodes">, named: ReadonlySet<number>): boolean {
  return nodes.some((node) => node.parents.some((i) => named.has(i)));
}

const NEEDS = new WeakMap<Knowledge, ReadonlyMap<string, string>>();

/** What the car must stand on, by set-up. */
function needsOf(knowledge: Knowledge): ReadonlyMap<string, string> {
  const kept = NEEDS.get(knowledge) ?? new Map(knowledge.setUps.setUps.map((s) => [s.id, s.needs]));
  NEEDS.set(knowledge, kept);
  return kept;
}

/** Can this person do the check with what is there, and do the answers not forbid it? */
export function canBeDone(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  placed: PlacedCheck,
  options: ProposeOptions,
): boolean {
  const { check, place } = placed;
  const who = options.who ?? "technician";
  const needs = needsOf(grounded.knowledge).get(check.setUp) ?? "nothing";
  if (RANKS[check.who] > RANKS[who]) return false;
  if (options.helper === false && check.helper) return false;
  if (options.lift === false && needs === "lift") return false;
  if (who !== "technician" && (needs === "lift" || needs === "stands")) return false;
  if (options.notPossible?.some((id) => id === check.id || id === placed.id) === true) return false;
  return forbiddenCheck(grounded.knowledge, answers, weighing.weighed.notices, check, place) === undefined;
}
