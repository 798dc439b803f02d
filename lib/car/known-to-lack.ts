import { evaluateLogic, logicPaths } from "../knowledge/logic.ts";
import { type Car, writeCar } from "./car.ts";

/**
 * Whether what is known of the car rules the condition out.
 *
 * A condition that asks for something not known rules nothing out.
 * Errors: `bad-logic` for a rule that may not be used.
 */
export function knownToLack(car: Car, when: unknown): boolean {
  if (when === undefined) return false;
  if (!logicPaths(when).every((path) => car.has(path))) return false;
  return !evaluateLogic(when, writeCar(car));
}
