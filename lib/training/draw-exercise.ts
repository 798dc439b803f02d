import { groundCar, repairOf, weighing } from "../engine/index.ts";
import { drawCar } from "../engine/simulate/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { type Difficulty, difficultyOf } from "./difficulty.ts";
import { statedOf } from "./draw-said.ts";
import { Exercise, EXERCISE_FORM, EXERCISE_FORMAT } from "./exercise.ts";
import { readyExercise, withTrust } from "./exercise-car.ts";
import { likelyRepairs } from "./likely-repairs.ts";
import { saidWords } from "./said-words.ts";

/** What an instructor asks for. */
export interface DrawWish {
  readonly id: string;
  readonly name: string;
  readonly release: string;
  readonly car: Exercise["car"];
  /** Complaint that the exercise is about; any when left out. */
  readonly complaint?: string | undefined;
  readonly level: Difficulty["level"];
  /** What happened to the car lately; nothing when left out. */
  readonly lately?: readonly string[] | undefined;
  /** What the trainee has to work with, and how far the customer is to be trusted; everything is there when left out. */
  readonly terms?: Partial<Exercise["terms"]> | undefined;
  /** Findings that the customer tells of the complaint; 4 when left out. */
  readonly told?: number | undefined;
}

/** Cars looked at before giving up. */
const MOST_CARS = 400;
/** Cars that are played to their end, which takes longest. */
const MOST_PLAYED = 12;

/**
 * Draws a car of the wanted difficulty from the model: what is wrong, what is said and every result follow it.
 *
 * Cars whose rank at the start does not fit are passed over before anything is played. When none of those played fits, the
 * nearest is taken, and says of itself how hard it is.
 * Errors: `unknown-id` for a complaint that is not there; `impossible-evidence` when no car of this build shows it.
 */
export function drawExercise(
  knowledge: Knowledge,
  wish: DrawWish,
  uniform: () => number,
): { readonly exercise: Exercise; readonly difficulty: Difficulty } {
  const { lately = [], terms = {} } = wish;
  const grounded = groundCar(knowledge, wish.car, lately);
  const trust = withTrust(knowledge, terms);
  const world = trust === knowledge ? grounded : groundCar(trust, wish.car, lately);
  let nearest: { exercise: Exercise; difficulty: Difficulty } | undefined;
  let played = 0;
  for (let k = 0; k < MOST_CARS && played < MOST_PLAYED; k++) {
    const car = drawCar(world, uniform, { complaint: wish.complaint, told: wish.told ?? 4 });
    const causes = new Set(car.fired.map((f) => f.suspect));
    // A cause outside the knowledge cannot be named, so it is no exercise.
    if (causes.size === 0 || car.leaked || causes.size > 2) continue;
    const behind = new Set([...causes].map((i) => repairOf(grounded, i)));
    const repairs = likelyRepairs(weighing(grounded, car.told));
    const rank = 1 + repairs.findIndex(({ repair }) => behind.has(repair));
    if (!mayBe(wish.level, rank)) continue;
    const said = statedOf(car.told);
    const exercise = Exercise.parse({
      format: EXERCISE_FORMAT,
      form: EXERCISE_FORM,
      id: wish.id,
      name: wish.name,
      release: wish.release,
      car: wish.car,
      lately,
      text: saidWords(knowledge, said),
      said,
      terms,
      hidden: {
        seed: car.seed,
        faults: grounded.suspects
          .filter((s) => car.present[s.index] === 1)
          .map((s) => ({ fault: s.fault, place: s.place, causes: causes.has(s.index) }))
          .sort((a, b) => Number(b.causes) - Number(a.causes))
          .slice(0, 8),
      },
    });
    const difficulty = difficultyOf(readyExercise(knowledge, exercise));
    played += 1;
    if (difficulty.level === wish.level && difficulty.solvable) return { exercise, difficulty };
    if (difficulty.solvable || nearest === undefined) nearest = { exercise, difficulty };
  }
  if (nearest !== undefined) return nearest;
  throw new CornerwiseError(
    "impossible-evidence",
    "No car of this build gives such an exercise; choose another complaint or car.",
    { complaint: wish.complaint ?? "" },
  );
}

/** Can an exercise with the true repair at this place of the ranking be as hard as wanted? */
function mayBe(level: Difficulty["level"], rank: number): boolean {
  if (level === "easy") return rank <= 2;
  return level === "hard" ? rank > 3 : rank <= 6;
}
