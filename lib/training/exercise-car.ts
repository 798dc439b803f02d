import {
  type Answer,
  findingName,
  type Grounded,
  groundCar,
  type PlacedCheck,
  placedChecks,
  type Suspect,
} from "../engine/index.ts";
import {
  checkResult,
  type FiredShowing,
  questionResult,
  type SimulatedCar,
} from "../engine/simulate/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Exercise } from "./exercise.ts";

/** An exercise made ready to be worked: the model of its car, and the car that answers. */
export interface ReadyExercise {
  readonly exercise: Exercise;
  readonly grounded: Grounded;
  readonly car: SimulatedCar;
  /** Hidden suspects behind the complaint, and those that are only there too. */
  readonly causes: readonly Suspect[];
  readonly innocent: readonly Suspect[];
}

/**
 * The simulated car of an exercise.
 *
 * Errors: `unknown-id` for a fault, place or finding that this car or knowledge does not have; `bad-request` when no
 * complaint is said, or a cause does not show it.
 */
export function readyExercise(knowledge: Knowledge, exercise: Exercise): ReadyExercise {
  const grounded = groundCar(knowledge, exercise.car, exercise.lately);
  const trust = withTrust(knowledge, exercise.terms);
  const world = trust === knowledge ? grounded : groundCar(trust, exercise.car, exercise.lately);
  for (const { finding } of [...exercise.said, ...exercise.hidden.results]) findingName(knowledge, finding);
  const complaint = knowledge.complaints.find((c) =>
    exercise.said.some((s) => s.state === "present" && s.finding === c.id),
  );
  if (complaint === undefined) {
    throw new CornerwiseError(
      "bad-request",
      "said: nobody complains of anything; let the customer say at least one complaint that is present.",
      { field: "said" },
    );
  }
  const present = new Uint8Array(world.suspects.length);
  const causes: Suspect[] = [];
  const innocent: Suspect[] = [];
  const fired: FiredShowing[] = [];
  exercise.hidden.faults.forEach(({ fault, place, causes: isCause }, k) => {
    const suspect = world.suspects.find((s) => s.fault === fault && s.place === place);
    if (suspect === undefined) {
      throw new CornerwiseError(
        "unknown-id",
        `hidden.faults.${k}: this car has no "${fault}" at "${place}"; take a fault and place that its parts have.`,
        { fault, place },
      );
    }
    present[suspect.index] = 1;
    if (!isCause) {
      innocent.push(suspect);
      return;
    }
    causes.push(suspect);
    const showings = world.links.get(complaint.id)?.find((l) => l.suspect === suspect.index)?.showings ?? [];
    const [strongest] = showings.toSorted((a, b) => b.strength.p - a.strength.p);
    if (strongest === undefined) {
      throw new CornerwiseError(
        "bad-request",
        `hidden.faults.${k}: "${fault}" does not show as "${complaint.id}"; say another complaint or mark it as innocent wear.`,
        { fault },
      );
    }
    fired.push({ suspect: suspect.index, showing: strongest });
  });
  return {
    exercise,
    grounded,
    car: {
      world,
      seed: exercise.hidden.seed,
      present,
      complaint,
      fired,
      leaked: false,
      heard: fired[0],
      told: toldAnswers(exercise),
      set: new Map(exercise.hidden.results.map(({ finding, ...found }) => [finding, found])),
    },
    causes,
    innocent,
  };
}

/** What the customer said, as answers. */
export function toldAnswers(exercise: Pick<Exercise, "said">): Answer[] {
  return exercise.said.map(({ finding, state, level }) => ({
    finding,
    state,
    by: "report",
    ...(level === undefined ? {} : { level }),
  }));
}

/**
 * What a check at a place, or a question (`ask:finding`), finds on the hidden car; the same whenever it is repeated.
 *
 * The instructor's own results go before those of the model.
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function exerciseResult({ car }: ReadyExercise, id: string): Answer[] {
  if (id.startsWith("ask:")) return [questionResult(car, id.slice(4))];
  const { nodes } = placedCheck(car.world, id);
  return checkResult(
    car,
    nodes.map((n) => ({ finding: n.id, levels: n.observation.levels })),
  );
}

/** A check at a place of this car, by its id. */
export function placedCheck(grounded: Grounded, id: string): PlacedCheck {
  const placed = placedChecks(grounded).find((p) => p.id === id);
  if (placed !== undefined) return placed;
  throw new CornerwiseError("unknown-id", `"${id}" is no check that can be made on this car.`, { id });
}

/** The knowledge with the owner as unreliable as the exercise wants. */
export function withTrust(
  knowledge: Knowledge,
  { unreliable }: Pick<Exercise["terms"], "unreliable">,
): Knowledge {
  if (unreliable === undefined) return knowledge;
  const { features, where = features } = knowledge.reports;
  // Never better at where it comes from than at the rest, nor than the knowledge takes anybody to be.
  const told = { features: 1 - unreliable, where: Math.min(where, 1 - unreliable) };
  return { ...knowledge, reports: { ...knowledge.reports, ...told } };
}
