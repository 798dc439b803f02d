import type { CompiledComplaint, CompiledShowing } from "../../knowledge/schema/compiled.ts";
import type { Answer } from "../answers.ts";
import type { Grounded } from "../ground.ts";

/** A showing of a suspect that fired on the complaint. */
export interface FiredShowing {
  readonly suspect: number;
  readonly showing: CompiledShowing;
}

/** A car drawn from a grounded model: what is wrong with it, what is complained of, what really caused that. */
export interface SimulatedCar {
  readonly world: Grounded;
  /** Fixes the result of every check and question. */
  readonly seed: number;
  /** Whether each suspect is there. */
  readonly present: Uint8Array;
  readonly complaint: CompiledComplaint;
  /** The truth: showings of present suspects that fired on the complaint. */
  readonly fired: readonly FiredShowing[];
  /** Causes outside the knowledge fired as well, or alone. */
  readonly leaked: boolean;
  /** Whose features the complaint has; undefined for a cause outside the knowledge. */
  readonly heard: FiredShowing | undefined;
  /** What the owner tells: the complaint and some of its features. */
  readonly told: readonly Answer[];
  /** Answers by finding that a person set, whatever the model says. */
  readonly set?: ReadonlyMap<string, Pick<Answer, "state" | "level">> | undefined;
}

/** Suspects that fired on the complaint, each once. */
export function firedSuspects(car: SimulatedCar): number[] {
  return [...new Set(car.fired.map((f) => f.suspect))];
}
