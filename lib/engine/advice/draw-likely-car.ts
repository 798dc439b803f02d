import { showingFit, featureWeights, showingStrength } from "../complaint-bit.ts";
import type { Answer } from "../answers.ts";
import { finerComponents } from "../finer-components.ts";
import type { Grounded } from "../ground.ts";
import { pickByWeight } from "../simulate/complaint-chance.ts";
import type { FiredShowing, SimulatedCar } from "../simulate/simulated-car.ts";
import type { Weighing } from "../weigh.ts";

/**
 * Draws what may be wrong with this very car, given the answers so far; undefined when nobody complains of anything.
 *
 * A way to explain the complaint is drawn by its chance, other faults by their chance beside it, each for itself. Which of
 * its ways to show a cause took follows how well they fit what was told. With several complaints the first is the one that
 * is heard; the others stand as told.
 */
export function drawLikelyCar(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  uniform: () => number,
): SimulatedCar | undefined {
  const { explanation, assembled } = weighing;
  const gathered = [...assembled.gathered.complaints.values()].find((c) => c.present);
  if (explanation === undefined || gathered === undefined) return undefined;
  const { complaint, features } = gathered;
  const component = pickByWeight(finerComponents(explanation), (c) => c.probability, uniform);
  if (component === undefined) return undefined;
  const present = Uint8Array.from(component.marginals, (p) => (uniform() < p ? 1 : 0));
  const links = grounded.links.get(complaint.id) ?? [];
  const weights = featureWeights(grounded, features);
  const wayOf = (suspect: number): FiredShowing | undefined => {
    const showings = links.find((l) => l.suspect === suspect)?.showings ?? [];
    const showing = pickByWeight(
      showings,
      (s) => s.strength.p * showingFit(grounded, suspect, s, features, weights),
      uniform,
    );
    return showing && { suspect, showing };
  };
  const causes =
    component.kind === "rest"
      ? [
          pickByWeight(
            links,
            (l) => (explanation.involved[l.suspect] ?? 0) * showingStrength(l.showings),
            uniform,
          ),
        ].flatMap((l) => (l === undefined ? [] : [l.suspect]))
      : component.set;
  for (const suspect of causes) present[suspect] = 1;
  const fired = causes.flatMap((suspect) => wayOf(suspect) ?? []);
  return {
    world: grounded,
    seed: Math.floor(uniform() * 2 ** 32),
    present,
    complaint,
    fired,
    leaked: fired.length === 0,
    heard: fired[Math.floor(uniform() * fired.length)],
    told: answers,
  };
}
