import { type Exercise, exerciseById, exerciseOwner, type Store } from "../../../lib/store/index.ts";
import { type Action, reachOf } from "../access.ts";
import type { Principal } from "../principal.ts";
import { ApiProblem } from "../problem.ts";

export const noSuchExercise = (): ApiProblem =>
  new ApiProblem("no-such-exercise", "No exercise has this id, or it is not one of yours.");

/** Whose exercises the asker sees: undefined for everybody's. */
export function ownersSeen(action: Action, principal: Principal): string | undefined {
  if (reachOf(action, principal) === "all") return undefined;
  return principal.is === "account" ? principal.id : "";
}

/** Whether exercises of this owner are the asker's to see. */
function reaches(action: Action, principal: Principal, ownerId: string | null): boolean {
  const reach = reachOf(action, principal);
  if (reach === "all") return true;
  return reach !== "none" && principal.is === "account" && principal.id === ownerId;
}

/** An exercise that is the asker's to change. Errors  ApiProblem no-such-exercise. */
export async function exerciseFor(
  { server, principal }: { readonly server: { readonly store: Store }; readonly principal: Principal },
  id: string,
): Promise<Exercise> {
  const exercise = await exerciseById(server.store, id);
  if (exercise === undefined || !reaches("keep-exercises", principal, exercise.ownerId))
    throw noSuchExercise();
  return exercise;
}

/** Whether the asker may see what was made of this exercise, a removed one too. */
export async function seesBoardOf(store: Store, principal: Principal, exerciseId: string): Promise<boolean> {
  if (reachOf("see-board", principal) === "none") return false;
  const owner = await exerciseOwner(store, exerciseId);
  return owner !== undefined && reaches("see-board", principal, owner.ownerId);
}
