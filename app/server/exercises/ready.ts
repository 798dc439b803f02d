import { CornerwiseError } from "../../../lib/errors.ts";
import type { HandOut } from "../../../lib/store/index.ts";
import { type Exercise, type ReadyExercise, readyExercise } from "../../../lib/training/index.ts";
import { keptOrMade } from "../kept-or-made.ts";
import { ApiProblem } from "../problem.ts";
import { releaseNamed } from "../releases.ts";
import { kept } from "./kept.ts";

/** One field that cannot be taken, in words. */
export const badField = (path: string, message: string): ApiProblem =>
  new ApiProblem("bad-input", `It cannot be taken in. ${path}: ${message} Mend it and send it again.`, {
    fields: [{ path, message }],
  });

/**
 * An exercise with the car that answers, and the sum of the knowledge that both are made of.
 *
 * Errors  ApiProblem bad-input: the knowledge is not here, or the car cannot be made.
 */
export async function readyToWork(exercise: Exercise): Promise<{ ready: ReadyExercise; sha256: string }> {
  const release = await releaseNamed(exercise.release);
  if (release === undefined) {
    throw badField("release", `This server has no knowledge ${exercise.release}.`);
  }
  try {
    return { ready: readyExercise(release.knowledge, exercise), sha256: release.sha256 };
  } catch (error) {
    if (!(error instanceof CornerwiseError)) throw error;
    const [, path = "exercise", message = error.message] = /^([\w.]+): (.*)$/s.exec(error.message) ?? [];
    throw badField(path, message);
  }
}

/** Hand-outs whose car is kept ready: a class works one or a few at a time. */
const MOST_READY = 20;

/** The car of a hand-out. It was made once already when the exercise was kept, so a failure is the server's. */
export function readyOf(handOut: HandOut): Promise<ReadyExercise> {
  const { ready } = kept();
  return keptOrMade(ready, handOut.id, MOST_READY, () => {
    const making = readyToWork(JSON.parse(handOut.body) as Exercise).then((made) => made.ready);
    making.catch(() => ready.delete(handOut.id));
    return making;
  });
}
