import type { CaseState } from "../../../lib/case/case-state.ts";
import { situationOf } from "../../../lib/case/situation.ts";
import {
  askNext,
  type DriveAdvice,
  driveAdvice,
  type Grounded,
  groundCar,
  type LayQuestion,
  weighing,
} from "../../../lib/engine/index.ts";
import { CornerwiseError } from "../../../lib/errors.ts";
import type { LayPicture } from "../../../lib/knowledge/schema/lay.ts";
import { keptOrMade } from "../kept-or-made.ts";
import { releases } from "../releases.ts";

/** Cars laid out ready: a customer answers several questions in a row about one. */
const MOST_GROUNDED = 8;
/** More than a form ever asks: what is open is looked up among them. */
const MOST_OPEN = 60;

/** What the answers so far come to. */
export interface WeighedForm {
  /** Questions that are worth asking, the most telling first. */
  readonly open: readonly LayQuestion[];
  /** Drawings that go with questions. */
  readonly pictures: readonly LayPicture[];
  /** Undefined while there is nothing to go by. */
  readonly advice: DriveAdvice | undefined;
  /** True when the advice is a graver one than the last: one that speaks against driving. */
  readonly stop: boolean;
}

const NOTHING: WeighedForm = { open: [], pictures: [], advice: undefined, stop: false };

/** Every route is a bundle of its own: what they share lies on the one global object. */
const KEY = Symbol.for("cornerwise.form");
const shared = globalThis as { [KEY]?: Map<string, Grounded> };

/**
 * Weighs a case for its form, by the release that the case names. One that cannot be weighed (its release is not here, its car
 * cannot be) has no questions; words and photos can be given all the same.
 */
export async function weighedForm(state: CaseState): Promise<WeighedForm> {
  const kept = (shared[KEY] ??= new Map());
  try {
    const here = releases();
    const knowledge = await here.open(state.release);
    const advice = knowledge.advice ?? (await here.open(here.newest)).advice;
    const pictures = knowledge.lay?.pictures ?? [];
    const { car, contexts, fitted, answers } = situationOf(knowledge, state);
    const key = JSON.stringify([state.release, car, contexts, fitted]);
    const grounded = keptOrMade(kept, key, MOST_GROUNDED, () => groundCar(knowledge, car, contexts, fitted));
    const weighed = weighing(grounded, answers);
    const open = askNext(grounded, answers, weighed, { most: MOST_OPEN, who: "driver" });
    if (advice === undefined || weighed.weighed.target === "none") return { ...NOTHING, open, pictures };
    const said = driveAdvice(grounded, weighed.weighed, advice);
    return { open, pictures, advice: said, stop: said.level !== advice.levels.at(-1)?.id };
  } catch (error) {
    if (error instanceof CornerwiseError) return NOTHING;
    throw error;
  }
}
