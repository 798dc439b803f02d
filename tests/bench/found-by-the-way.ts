import type { Grounded } from "../../lib/engine/index.ts";
import { checkResult, gradeFound, type SimulatedCar } from "../../lib/engine/simulate/index.ts";

/** Cars that are tried until the look finds something. */
const MOST_DRAWS = 1000;

/**
 * A car with a fault that nobody complains of, and one of the fault's own findings as a routine look over the car found
 * it: whichever, each as often as the fault shows it. Undefined when nothing shows it.
 */
export function foundByTheWay(
  world: Grounded,
  uniform: () => number,
  suspect: number,
): SimulatedCar | undefined {
  const [complaint] = world.knowledge.complaints;
  const own = [...world.nodes.values()].filter((n) => n.parents.includes(suspect));
  const shown = own.map((n) => n.strengths[0]?.[n.parents.indexOf(suspect)] ?? 0);
  const all = shown.reduce((sum, p) => sum + p, 0);
  if (complaint === undefined || all <= 0) return undefined;
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const present = Uint8Array.from(world.prior, (p, i) => (uniform() < p || i === suspect ? 1 : 0));
    const seed = Math.floor(uniform() * 2 ** 32);
    let left = uniform() * all;
    const node = own.find((_, k) => (left -= shown[k] ?? 0) < 0);
    if (node === undefined) continue;
    const showing = { complaint: complaint.id, strength: { p: 1, spread: 0, basis: "" }, features: {} };
    const car = { world, seed, present, complaint, fired: [{ suspect, showing }], leaked: false };
    const asked = { ...car, heard: undefined, told: [] };
    if (gradeFound(asked, node.id) < 0) continue;
    const told = checkResult(asked, [{ finding: node.id, levels: node.observation.levels }]);
    return { ...asked, told };
  }
  return undefined;
}
